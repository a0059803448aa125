// Structured logs: one JSON object a line. Never what somebody learns, only that something happened.

/** How grave a line is. */
export type Level = "info" | "warn" | "error";

/** Writes one event with its fields. */
export type Log = (level: Level, event: string, fields?: Readonly<Record<string, unknown>>) => void;

/** A log that writes lines at or above `least` with the time of `clock`. */
export function createLog(write: (line: string) => void, clock: () => number, least: Level = "info"): Log {
  const order: readonly Level[] = ["info", "warn", "error"];
  return (level, event, fields = {}) => {
    if (order.indexOf(level) < order.indexOf(least)) return;
    write(`${JSON.stringify({ time: new Date(clock()).toISOString(), level, event, ...fields })}\n`);
  };
}
