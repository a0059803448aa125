// All verbs of the command line.
import { affordVerb } from "./afford-verb.ts";
import { calendarVerb } from "./calendar-verb.ts";
import { chartVerb } from "./chart-verb.ts";
import { critiqueVerb } from "./critique-verb.ts";
import { demoVerb } from "./demo-verb.ts";
import { designVerb } from "./design-verb.ts";
import { exportVerb } from "./export-verb.ts";
import { importVerb } from "./import-verb.ts";
import { kitVerb } from "./kit-verb.ts";
import { laddersVerb } from "./ladders-verb.ts";
import { loadVerb } from "./load-verb.ts";
import { numberVerb } from "./number-verb.ts";
import { paperVerb } from "./paper-verb.ts";
import { readyVerb } from "./ready-verb.ts";
import { rebuildVerb } from "./rebuild-verb.ts";
import { serveVerb } from "./serve-verb.ts";
import { sitVerb } from "./sit-verb.ts";
import { splitVerb } from "./split-verb.ts";
import { todayVerb } from "./today-verb.ts";
import type { Verb } from "./verb.ts";

export type { Verb } from "./verb.ts";

/** In the order in which the overview lists them. */
export const VERBS: readonly Verb[] = [
  serveVerb,
  demoVerb,
  importVerb,
  critiqueVerb,
  splitVerb,
  exportVerb,
  todayVerb,
  sitVerb,
  chartVerb,
  designVerb,
  laddersVerb,
  loadVerb,
  affordVerb,
  readyVerb,
  calendarVerb,
  kitVerb,
  numberVerb,
  paperVerb,
  rebuildVerb,
];
