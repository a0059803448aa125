// The calendar of the coming days as a file, and as an address that other programs read again and again.
import { Link } from "wouter";
import type { PlanView } from "../../../app/views.ts";
import { calendarUrl } from "../../client.ts";
import { CopyField } from "./copy-field.tsx";
import "../../styles/charts.css";

/** The panel of the calendar. */
export function CalendarPanel({ view }: { readonly view: PlanView }) {
  return (
    <section className="sheet" aria-labelledby="calendar-file">
      <h2 id="calendar-file">Calendar file</h2>
      {view.box ? (
        <BoxCalendar box={view.box.id} />
      ) : (
        <p>
          There is no box yet, so there are no days to write down. It is set up on the <Link href="/">Today page</Link>.
        </p>
      )}
    </section>
  );
}

function BoxCalendar({ box }: { readonly box: string }) {
  const path = calendarUrl(box);
  return (
    <>
      <p>The coming days for your own calendar: what is visited on each, and about how long it will take.</p>
      <p className="begin-row">
        <a className="button" href={path} download="longhold.ics">
          Download the calendar file
        </a>
        <span className="hint">As things stand today; later changes are not in it.</span>
      </p>
      <CopyField label="Address to subscribe to" text={new URL(path, location.origin).href} />
      <p className="hint">
        A calendar program that subscribes to this address follows every change. It works only while Longhold runs on
        this machine, and only for programs on this machine. Whoever knows the address can read the calendar.
      </p>
    </>
  );
}
