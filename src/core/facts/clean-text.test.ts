import fc from "fast-check";
import { expect, it, vi } from "vitest";
import { cleanText } from "./clean-text.ts";

// Quick alone; room for a busy machine.
vi.setConfig({ testTimeout: 30_000 });

it("joins letters and their accents, and keeps both lines of two", () => {
  expect(cleanText("  Boo\u0308tes\r\nthe Herdsman\r ")).toBe("Boötes\nthe Herdsman");
});

it("takes out what cannot be seen", () => {
  expect(cleanText("Ve\u0000ga\u0007\u001b[1m\tin\u0085 Lyra\u007f")).toBe("Vega[1m in Lyra");
});

it("replaces half characters", () => {
  expect(cleanText("a\ud800b\udc00")).toBe("a\ufffdb\ufffd");
  expect(cleanText("🔭")).toBe("🔭");
});

it("leaves markup as the text it is", () => {
  expect(cleanText('<b onclick="x()">Vega</b> &amp;')).toBe('<b onclick="x()">Vega</b> &amp;');
});

it("has nothing left to do the second time", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 30 }), (raw) => {
      const clean = cleanText(raw);
      expect(cleanText(clean)).toBe(clean);
      expect(clean).not.toMatch(/[^\P{Cc}\n]/u);
    }),
  );
});
