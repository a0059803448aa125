// The command line as a shell sees it: what it prints, where, and with which status.
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { paperDay } from "../../src/app/paper-results.ts";
import type { PaperDayView, PaperOutcome } from "../../src/app/views.ts";
import { printedNumber } from "../../src/core/cards/card-number.ts";
import { databaseFile } from "../../src/server/data-folder.ts";
import { randomBytes } from "../../src/server/random-bytes.ts";
import { openSqliteStore } from "../../src/store/sqlite-store.ts";
import { longhold, longholdTold, withFolder } from "../support/program.ts";

const VERBS = [
  ...["serve", "demo", "import", "export", "today", "sit", "chart", "design", "load", "afford", "ready"],
  ...["critique", "split", "ladders", "calendar", "kit", "number", "paper", "rebuild"],
];

/** `longhold sit` with these lines typed. */
const sit = (data: string, lines: readonly string[], newCards = "0") =>
  longholdTold(`${lines.join("\n")}\n`, "sit", "--new", newCards, "--data", data);

/** Today's piles and new cards, read from the folder itself. */
async function paperToday(data: string): Promise<PaperDayView> {
  const store = await openSqliteStore(databaseFile(data));
  try {
    return await paperDay({ store, clock: Date.now, random: randomBytes });
  } finally {
    await store.close();
  }
}

describe("results from paper", () => {
  test("of several days come as a table, each read against what the day before it did", () =>
    withFolder(async (folder) => {
      const data = join(folder, "data");
      expect((await longhold("demo", "--data", data)).status).toBe(0);
      const { date, dates, newCards } = await paperToday(data);
      const yesterday = dates.at(-2) ?? "";
      const [first = 0, second = 0] = newCards;
      const days = join(folder, "days.csv");
      const table = (missed: string): void =>
        writeFileSync(
          days,
          `date,missed,introduced\n${date},${missed},\n${yesterday},,${printedNumber(first)} ${printedNumber(second)}\n`,
        );
      const paper = (...words: readonly string[]) => longhold("paper", days, "--data", data, "--json", ...words);
      const slipped = printedNumber(first).replace(/\d$/u, (digit) => `${(Number(digit) + 1) % 10}`);
      table(slipped);
      expect(await paper()).toMatchObject({
        status: 2,
        stderr: expect.stringMatching(new RegExp(`Line 2: “${slipped}” is no card number.*Look again\\.\n$`, "u")),
      });
      expect((await paper("--date", date)).stderr).toContain("date is a column of it");
      // Introduced yesterday, the card is due today and can be missed.
      table(printedNumber(first));
      const tried = JSON.parse((await paper("--dry-run")).stdout) as { days: PaperOutcome[] };
      expect(tried.days).toMatchObject([
        { date: yesterday, introduced: 2 },
        { date, missed: 1, left: 0 },
      ]);
      expect((await paperToday(data)).newCards).toEqual(newCards);
      const done = JSON.parse((await paper()).stdout) as typeof tried;
      const counts = (days: readonly PaperOutcome[]) => days.map((day) => ({ ...day, sitting: null }));
      expect(counts(done.days)).toEqual(counts(tried.days));
      expect((await paperToday(data)).undo).toMatchObject({ dates: [yesterday, date] });
      expect((await longhold("rebuild", "--data", data, "--json")).stdout).toContain('"differences":[]');
    }));

  test("are entered by the numbers of the missed cards, after a look at what that does", () =>
    withFolder(async (data) => {
      expect((await longhold("demo", "--data", data)).status).toBe(0);
      const paper = (...words: readonly string[]) => longhold("paper", "--data", data, "--json", ...words);
      const tried = JSON.parse((await paper("--dry-run")).stdout) as { recalled: number; missed: number };
      const refused = await paper("--missed", "527-4");
      expect(refused.status).toBe(2);
      expect(refused.stderr).toContain("“527-4” is no card number");
      const done = JSON.parse((await paper()).stdout) as typeof tried;
      expect([done.recalled, done.missed]).toEqual([tried.recalled, tried.missed]);
      expect(done.recalled).toBeGreaterThan(0);
      expect((await longhold("rebuild", "--data", data, "--json")).stdout).toContain('"differences":[]');
    }));
});

describe("help and errors", () => {
  test("every verb explains itself and succeeds", async () => {
    for (const verb of VERBS) {
      const { status, stdout, stderr } = await longhold(verb, "--help");
      expect({ verb, status, stderr }).toEqual({ verb, status: 0, stderr: "" });
      expect(stdout).toContain(`usage: longhold ${verb}`);
    }
    expect((await longhold("--help")).stdout.match(/^ {2}\w+/gm)).toHaveLength(VERBS.length);
  });

  test.each([
    [["polish"], "there is no verb “polish”"],
    [["chart", "--days", "3"], "--days"],
    [["chart", "--compartments", "seven"], "--compartments takes a whole number from 1 to 20, not “seven”"],
    [["chart", "--compartments", "3", "--bundles", "1,1"], "--bundles needs 3 numbers"],
    [["chart", "--bundles", "1,1,3"], "compartment 3: 3 bundles do not divide its period of 4 days evenly"],
    [["import", "facts.csv"], "--subject NAME is missing"],
    [["import", "--subject", "Stars"], "FILE is missing"],
    [["serve", "--port", "70000"], "--port takes a whole number from 0 to 65535"],
  ])("bad usage ends with status 2 and one line: %j", async (words, said) => {
    const { status, stdout, stderr } = await longhold(...words);
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toContain(said);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
  });

  test("failure ends with status 1 and one line", () =>
    withFolder(async (data) => {
      for (const words of [
        ["today", "--data", join(data, "none")],
        ["import", join(data, "none.csv"), "--subject", "Stars", "--data", data],
      ]) {
        const { status, stderr } = await longhold(...words);
        expect(status).toBe(1);
        expect(stderr.trimEnd().split("\n")).toHaveLength(1);
      }
    }));
});

describe("chart", () => {
  test("prints the 64-day chart as agreed, highest compartment first", async () => {
    const { stdout } = await longhold("chart", "--compartments", "7", "--json");
    const chart = JSON.parse(stdout) as { cycle: number; tabs: number; days: { day: number; visits: unknown[] }[] };
    expect(Object.keys(chart)).toEqual(["cycle", "tabs", "days"]);
    expect(chart).toMatchObject({ cycle: 64, tabs: 7 });
    expect(chart.days).toHaveLength(64);
    // Common practice: day 1 is "2, 1", day 2 is "3, 1"; day 64 has compartment 1 alone.
    expect(chart.days[0]).toEqual({
      day: 1,
      visits: [
        { compartment: 2, bundle: 1 },
        { compartment: 1, bundle: 1 },
      ],
    });
    expect(chart.days[1]).toEqual({
      day: 2,
      visits: [
        { compartment: 3, bundle: 1 },
        { compartment: 1, bundle: 1 },
      ],
    });
    expect(chart.days[63]).toEqual({ day: 64, visits: [{ compartment: 1, bundle: 1 }] });
  });

  test("takes bundles and offsets", async () => {
    const { stdout } = await longhold("chart", "--bundles", "1,1,1,1,2,4,8", "--offsets", "0,1,3,6,4,0,2", "--json");
    const chart = JSON.parse(stdout) as { tabs: number; days: { visits: { compartment: number; bundle: number }[] }[] };
    expect(chart.tabs).toBe(18);
    // Compartment 7 in 8 bundles is visited every 8 days from day 2 on, its bundles in turn.
    const seventh = chart.days.flatMap(({ visits }, i) =>
      visits.filter((visit) => visit.compartment === 7).map((visit) => [i + 1, visit.bundle]),
    );
    expect(seventh).toEqual([
      [2, 1],
      [10, 2],
      [18, 3],
      [26, 4],
      [34, 5],
      [42, 6],
      [50, 7],
      [58, 8],
    ]);
  });

  test("takes periods that are not powers of two", async () => {
    const { stdout } = await longhold("chart", "--periods", "1,3,9", "--json");
    expect(JSON.parse(stdout)).toMatchObject({ cycle: 9, tabs: 3 });
  });
});

test("import, export and import again give the same facts", () =>
  withFolder(async (data) => {
    const folder = mkdtempSync(join(tmpdir(), "longhold-list-"));
    await sharp({ create: { width: 60, height: 40, channels: 3, background: "#0a1530" } })
      .png()
      .toFile(join(folder, "lyra.png"));
    writeFileSync(
      join(folder, "sky.csv"),
      'prompt,answer,statement,picture,tags,sound,angles\r\nBrightest star of Lyra,Vega,,,"star; summer sky",vega.wav,reverse\r\n,,"[Altair] is the brightest star of [Aquila], ""the eagle"".",,,,\r\n,Lyra,,lyra.png,,,\r\n',
    );
    writeFileSync(join(folder, "vega.wav"), Buffer.from("RIFF\u0004\u0000\u0000\u0000WAVE", "latin1"));
    const first = await longhold(
      "import",
      join(folder, "sky.csv"),
      "--subject",
      "The night sky",
      "--data",
      data,
      "--json",
    );
    expect(first.stderr).toBe("");
    expect(JSON.parse(first.stdout)).toEqual({ saved: 3, cards: 5, duplicates: 0, problems: 0 });
    const again = await longhold(
      "import",
      join(folder, "sky.csv"),
      "--subject",
      "The night sky",
      "--data",
      data,
      "--json",
    );
    expect(JSON.parse(again.stdout)).toEqual({ saved: 0, cards: 0, duplicates: 3, problems: 0 });

    const out = join(folder, "out.csv");
    expect((await longhold("export", "--subject", "The night sky", "--out", out, "--data", data)).status).toBe(0);
    await withFolder(async (other) => {
      const words = [
        "import",
        out,
        "--pictures",
        join(folder, "out-files"),
        "--subject",
        "Copy",
        "--data",
        other,
        "--json",
      ];
      expect(JSON.parse((await longhold(...words)).stdout)).toMatchObject({ saved: 3, cards: 5, problems: 0 });
      expect((await longhold("export", "--data", other)).stdout).toBe(readFileSync(out, "utf8"));
    });
  }));

test("a zip with a list and its pictures comes in as one, asked one way if that is wanted", () =>
  withFolder(async (data) => {
    const picture = await sharp({ create: { width: 60, height: 40, channels: 3, background: "#0a1530" } })
      .png()
      .toBuffer();
    const list = "prompt,answer,picture\r\nBrightest star of Lyra,Vega,lyra.png\r\n";
    const zip = zipSync({ "facts.csv": strToU8(list), "pictures/lyra.png": new Uint8Array(picture) });
    writeFileSync(join(data, "sky.zip"), zip);
    const words = ["import", join(data, "sky.zip"), "--subject", "Sky", "--one-way", "--data", data, "--json"];
    expect(JSON.parse((await longhold(...words)).stdout)).toEqual({ saved: 1, cards: 1, duplicates: 0, problems: 0 });
    writeFileSync(join(data, "bad.zip"), zipSync({ "../facts.csv": strToU8(list) }));
    const bad = await longhold("import", join(data, "bad.zip"), "--subject", "Sky", "--data", data);
    expect(bad.stderr).toContain("outside itself");
  }));

test("rows with problems are named by line and column, and the rest goes on unless --strict", () =>
  withFolder(async (data) => {
    const list = join(data, "planets.csv");
    writeFileSync(list, "statement\n[Venus] is hotter than [Mercury].\nMars is red.\n[Jupiter is large.\n");
    const strict = await longhold("import", list, "--subject", "Planets", "--strict", "--data", data);
    expect(strict.status).toBe(1);
    expect(strict.stderr).toMatch(/planets\.csv:3:1: .*no gap/);
    expect(strict.stderr).toMatch(/planets\.csv:4:1: .*never closed/);
    const lenient = await longhold("import", list, "--subject", "Planets", "--data", data, "--json");
    expect(JSON.parse(lenient.stdout)).toEqual({ saved: 1, cards: 2, duplicates: 0, problems: 2 });
  }));

test("the demo fills an empty folder, today tells what is due, and the log replays to the same places", () =>
  withFolder(async (data) => {
    const made = JSON.parse((await longhold("demo", "--data", data, "--json")).stdout) as {
      facts: number;
      pictures: number;
    };
    expect(made.facts).toBeGreaterThan(200);
    expect(made.pictures).toBeGreaterThanOrEqual(30);
    const today = JSON.parse((await longhold("today", "--data", data, "--json")).stdout) as {
      due: number;
      demo: boolean;
    };
    expect(today.demo).toBe(true);
    expect(today.due).toBeGreaterThan(0);
    expect((await longhold("rebuild", "--data", data)).stdout).toContain("no differences");
    const twice = await longhold("demo", "--data", data);
    expect(twice.status).toBe(1);
    expect(twice.stderr).toContain("The demo needs an empty one");
  }));

test("a sitting in the terminal pauses, takes back, goes on and finishes", () =>
  withFolder(async (data) => {
    await longhold("demo", "--data", data);
    const due = JSON.parse((await longhold("today", "--data", data, "--json")).stdout) as { due: number };
    // One answer, taken back by the next line, given again, then a pause.
    const first = await sit(data, ["", "m", "b", "", "r", "q"]);
    expect(first.stdout).toContain("Paused. Nothing is lost");
    const after = JSON.parse((await longhold("today", "--data", data, "--json")).stdout) as { due: number };
    expect(after.due).toBe(due.due - 1);
    const rest = await sit(
      data,
      Array.from({ length: 2 * due.due + 60 }, (_, i) => (i % 2 ? "r" : "")),
      "0",
    );
    expect(rest.stdout).toMatch(/Sitting finished: \d+ moved up, 0 sent back/);
    expect((await longhold("rebuild", "--data", data)).stdout).toContain("no differences");
  }));
