// The page of instructions, and the page by which a printer's offset is measured.

import type { Offset } from "./card-pages.ts";
import { behind, type Slot } from "./impose.ts";
import { type KitPage, type LineItem, moveItem, nameItem, type PageItem, textItem } from "./page.ts";
import type { Size } from "./paper.ts";

const MARGIN = 20;

const STEPS: readonly (readonly [title: string, words: string])[] = [
  [
    "Print",
    "Choose “actual size” or “100 %” in the print window, never “fit to page”. Print the calibration page first and hold it against the light: the crosses of both sides must lie on each other.",
  ],
  [
    "Cut",
    "Cut along the small crosses, cards first into strips, then the strips into cards. Cut the dividers along their lines. Scissors and knives are sharp: cut on a mat along a metal ruler, away from your fingers, with a fresh blade, and close or cover the blade when you put it down. Children cut with round-tipped scissors, and somebody grown up beside them.",
  ],
  [
    "Set up",
    "Put the dividers into the box: the stock in front, then the compartments in the order of their numbers, the kept cards behind. All cards begin in the stock, shuffled.",
  ],
  [
    "Sit every day",
    "Look up today's chart day in the calendar. Ask the piles it names, from the highest compartment down. Say the answer before you turn the card, sideways, like a page.",
  ],
  [
    "Move the cards",
    "Recalled: one compartment on, into the bundle visited last. Missed: back to compartment 1, whatever compartment it was in. Recalled in the last compartment: the card is kept.",
  ],
  [
    "Take in new cards",
    "Take a few from the stock, read both sides, ask them until each is recalled, and put them into compartment 1.",
  ],
  ["Ask again", "At the end ask the missed cards again, in turn, until each is recalled. They stay in compartment 1."],
  ["Missed a day?", "Go on with the next chart day when you sit down again. A card is never lost by a pause."],
  [
    "Caution",
    "Memory does not replace current official sources, local rules and licensed practice. Look things up before safety depends on them.",
  ],
];

/** About how many lines a step takes, with its title and the space after it. */
const linesOf = (words: string): number => Math.ceil(words.length / 95) + 2.5;

/** One page of plain words: how to print, cut and practise; with its owner's name if there is one. */
export function instructionPage(sheet: Size, owner = ""): KitPage {
  const line = { x: MARGIN, width: sheet.width - 2 * MARGIN };
  const top = MARGIN + 14;
  const share = (sheet.height - top - MARGIN) / STEPS.reduce((sum, [, words]) => sum + linesOf(words), 0);
  const title = "How to use this box";
  return {
    ...sheet,
    items: [
      textItem({ ...line, y: MARGIN, height: 10 }, title, {
        most: 20,
        heading: 1,
        runs: [{ text: title, look: "strong" }],
      }),
      ...(owner === "" ? [] : [nameItem({ ...line, y: MARGIN - 8, height: 7 }, owner, { most: 14, lie: "middle" })]),
      ...STEPS.flatMap(([head, words], i) => {
        const y = top + share * STEPS.slice(0, i).reduce((sum, [, before]) => sum + linesOf(before), 0);
        const height = share * linesOf(words);
        const runs = [{ text: head, look: "strong" as const }];
        return [
          textItem({ ...line, y, height: 6 }, head, { most: 12, heading: 2, runs }),
          textItem({ ...line, y: y + 6, height: height - 6 }, words, { most: 10.5, least: 7 }),
        ];
      }),
    ],
  };
}

/** How far from the middle of a cross its scale goes, in millimetres. */
const REACH = 6;

/** Front and back of the calibration page: five crosses, on the front with a scale of whole millimetres. */
export function calibrationPages(sheet: Size, turn: "long" | "short", offset: Offset): readonly KitPage[] {
  const { width, height } = sheet;
  const spots = [
    [30, 45],
    [width - 30, 45],
    [width / 2, height / 2],
    [30, height - 45],
    [width - 30, height - 45],
  ] as const;
  const middle = { x: MARGIN, width: width - 2 * MARGIN };
  const words =
    "Print both sides and hold the sheet against the light, the back towards you. Type on the Kit page how far the crosses of the back lie from those of the front. On the command line, a back that lies 1 mm to the left and 0.5 mm below is put right by --shift 1,-0.5. The line below must be 100 mm long; if not, the printer scales: choose “actual size”.";
  const ruled: readonly PageItem[] = [
    drawn([width / 2 - 50, 85], [width / 2 + 50, 85], 0.2),
    drawn([width / 2 - 50, 82], [width / 2 - 50, 88], 0.2),
    drawn([width / 2 + 50, 82], [width / 2 + 50, 88], 0.2),
  ];
  const front = [
    textItem({ ...middle, y: 12, height: 9 }, "Calibration, front", { most: 16, heading: 1 }),
    textItem({ ...middle, y: 56, height: 22 }, words, { most: 10, name: "the words of the calibration page" }),
    ...ruled,
    ...spots.flatMap(([x, y]) => scale(x, y)),
  ];
  const back = spots.flatMap(([x, y]) => {
    const slot: Slot = { x: x - REACH, y: y - REACH, width: 2 * REACH, height: 2 * REACH, turned: false };
    const there = behind(sheet, slot, turn);
    return cross(there.x + REACH, there.y + REACH);
  });
  return [
    { ...sheet, items: front },
    {
      ...sheet,
      items: [
        textItem({ ...middle, y: 12, height: 9 }, "Calibration, back", { most: 16, align: "center", heading: 1 }),
        ...back.map((item) => moveItem(item, offset)),
      ],
    },
  ];
}

const drawn = (from: readonly [number, number], to: readonly [number, number], width: number): LineItem => ({
  kind: "line",
  from,
  to,
  width,
  look: "drawn",
});

const cross = (x: number, y: number): readonly LineItem[] => [
  drawn([x - REACH, y], [x + REACH, y], 0.1),
  drawn([x, y - REACH], [x, y + REACH], 0.1),
];

function scale(x: number, y: number): readonly LineItem[] {
  const marks = [...cross(x, y)];
  for (let i = -REACH; i <= REACH; i++) {
    const arm = i % 5 === 0 ? 1.5 : 0.8;
    marks.push(drawn([x + i, y - arm], [x + i, y + arm], 0.08), drawn([x - arm, y + i], [x + arm, y + i], 0.08));
  }
  return marks;
}
