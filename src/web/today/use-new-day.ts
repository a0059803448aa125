// A page left open overnight notices the new day.
import { useQueryClient } from "@tanstack/react-query";
import { useEffect } from "react";
import type { Calendar } from "../../core/calendar/calendar.ts";
import { localDateAt } from "../../core/calendar/local-date.ts";
import { KEYS, useRefresh } from "../data/queries.ts";

const LOOK_MS = 20_000;

/** Asks for everything anew when the box's day turns over, and forgets the sitting of the day before. */
export function useNewDay({ timeZone, rollOverHour }: Calendar): void {
  const client = useQueryClient();
  const refresh = useRefresh();
  useEffect(() => {
    // This clock only says that a day has passed; which day it is, the server knows.
    const dateNow = (): string => localDateAt(Date.now(), timeZone, rollOverHour);
    let date = dateNow();
    const timer = setInterval(() => {
      const now = dateNow();
      if (now === date) return;
      date = now;
      client.removeQueries({ queryKey: KEYS.sitting });
      void refresh();
    }, LOOK_MS);
    return () => clearInterval(timer);
  }, [client, refresh, timeZone, rollOverHour]);
}
