// A PDF in the making: begun, watched, stopped, and found again after a look at another page.
import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import type { KitJobView } from "../../../app/print-views.ts";
import type { KitPart } from "../../../core/kit/kit-pages.ts";
import { ApiError, api, type KitOrder } from "../../client.ts";
import { windowShelf } from "../../data/storage.ts";

const KEPT = "longhold:kit-job";
const POLL_MS = 250;
const KEY = "kit-job";

/** A PDF and the order it was made by, as text. */
interface KeptJob {
  readonly id: string;
  readonly order: string;
}

/** The PDF that was begun last. */
export interface KitJob {
  readonly view: KitJobView | null;
  /** The order it was made by, as text. */
  readonly order: string;
  /** What it holds. */
  readonly parts: readonly KitPart[];
  /** Whether it was begun since the page was opened. */
  readonly here: boolean;
  readonly error: unknown;
  readonly busy: boolean;
  readonly open: (kit: KitOrder, zip: boolean) => void;
  readonly stop: () => void;
  /** Takes over how it stands, as the server said elsewhere. */
  readonly note: (view: KitJobView) => void;
}

/** The order of a PDF as text, by which it is told whether the choices were changed since. */
export const orderText = (kit: KitOrder, zip: boolean): string => JSON.stringify([kit, zip]);

const partsOf = (order: string): readonly KitPart[] => (JSON.parse(order) as [KitOrder, boolean])[0].parts;

/** Looks after one PDF at a time. */
export function useKitJob(): KitJob {
  const client = useQueryClient();
  const [kept, setKept] = useState(() => keptJob(windowShelf.get(KEPT)));
  const note = (view: KitJobView): void => void client.setQueryData([KEY, view.id], view);
  const status = useQuery({
    queryKey: [KEY, kept?.id],
    queryFn: () => statusOf(kept?.id ?? ""),
    enabled: kept !== null,
    refetchInterval: ({ state }) => (state.data?.state === "making" ? POLL_MS : false),
    refetchIntervalInBackground: true,
  });
  const open = useMutation({
    mutationFn: ({ kit, zip }: { readonly kit: KitOrder; readonly zip: boolean }) => api.openKit(kit, zip),
    onSuccess: (view, { kit, zip }) => {
      const job = { id: view.id, order: orderText(kit, zip) };
      note(view);
      windowShelf.set(KEPT, JSON.stringify(job));
      setKept(job);
    },
  });
  const stop = useMutation({ mutationFn: () => api.stopKit(kept?.id ?? ""), onSuccess: note });
  return {
    view: status.data ?? null,
    order: kept?.order ?? "",
    parts: kept ? partsOf(kept.order) : [],
    here: open.isSuccess,
    error: open.error ?? stop.error ?? status.error,
    busy: open.isPending,
    open: (kit, zip) => open.mutate({ kit, zip }),
    stop: () => stop.mutate(),
    note,
  };
}

/** The server holds the newest few; one that is gone is as if it had never been made. */
async function statusOf(id: string): Promise<KitJobView | null> {
  try {
    return await api.kitStatus(id);
  } catch (error) {
    if (!(error instanceof ApiError) || error.kind !== "not-found") throw error;
    windowShelf.remove(KEPT);
    return null;
  }
}

function keptJob(text: string | null): KeptJob | null {
  try {
    const { id, order } = JSON.parse(text ?? "null") as KeptJob;
    return typeof id === "string" && Array.isArray(partsOf(order)) ? { id, order } : null;
  } catch {
    return null;
  }
}
