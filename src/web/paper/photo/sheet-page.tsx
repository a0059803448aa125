// A sitting sheet read from photos by itself: its numbers, to be taken to wherever results are entered.
import { useState } from "react";
import { Link, useSearch } from "wouter";
import { isLocalDate } from "../../../core/calendar/local-date.ts";
import { printedNumber } from "../../../core/cards/card-number.ts";
import type { SheetReading } from "../../../core/paper/sheet-reading.ts";
import { useToday } from "../../data/queries.ts";
import { ArrivingHeading } from "../../shell/arriving-heading.tsx";
import { PageHeading } from "../../shell/page-heading.tsx";
import { Loaded } from "../../shell/states.tsx";
import { counted, longDate } from "../../words.ts";
import { PhotoReader } from "./photo-reader.tsx";

/** Reads a sheet of the box, of the date in the address or of any, and says what stands on it; records nothing. */
export function SheetPage() {
  const today = useToday();
  const asked = new URLSearchParams(useSearch()).get("date");
  const date = asked !== null && isLocalDate(asked) ? asked : null;
  const [reading, setReading] = useState<SheetReading | null>(null);
  return (
    <>
      <PageHeading title="Read a sheet">Read a sitting sheet</PageHeading>
      <p>
        <Link href="/paper">Enter paper results</Link> records what a sheet says.
      </p>
      <Loaded query={today} what="the box">
        {({ box }) =>
          box ? (
            <>
              {reading ? <ReadNumbers reading={reading} /> : null}
              <PhotoReader wanted={{ box: box.id, date }} onRead={setReading} />
            </>
          ) : (
            <p className="lead">Sheets are read for a box, and there is none yet.</p>
          )
        }
      </Loaded>
    </>
  );
}

/** What was read, in one line that can be copied. */
function ReadNumbers({ reading: { date, asked, missed } }: { readonly reading: SheetReading }) {
  const exception = missed.length > 0 ? ` except ${missed.map(printedNumber).join(", ")}` : "";
  return (
    <section aria-labelledby="read-numbers">
      <ArrivingHeading id="read-numbers">{longDate(date)} is read</ArrivingHeading>
      <p>
        {counted(asked.length, "card", "cards")} asked. All recalled{exception}.
      </p>
    </section>
  );
}
