import { describe, expect, it } from "vitest";
import { mathmlForPrint } from "./mathml-for-print.ts";

describe("MathML for print", () => {
  it("has colours as attributes, whatever else the style says", () => {
    expect(mathmlForPrint('<mi style="color:#ff0000;">x</mi>')).toBe('<mi mathcolor="#ff0000">x</mi>');
    expect(mathmlForPrint('<mi style="border-color:#ff0000;">x</mi>')).toBe("<mi>x</mi>");
  });

  it("has the sides of columns as attributes and no padding", () => {
    expect(mathmlForPrint('<mtd class="tml-left" style="padding-left:0em;"><mn>1</mn></mtd>')).toBe(
      '<mtd columnalign="left"><mn>1</mn></mtd>',
    );
    expect(mathmlForPrint('<mtable displaystyle="true" class="tml-jot"></mtable>')).toContain('displaystyle="true"');
  });

  it("keeps the frame of a row", () => {
    const framed = '<mrow style="padding:3pt;border:1px solid;"><mi>y</mi></mrow>';
    expect(mathmlForPrint(framed)).toBe(framed);
  });

  it("shows once what is laid over something unseen", () => {
    const over =
      '<mpadded lspace="-1width" width="0.1px" style="position:relative;"><mpadded width="0.1px"><mphantom><mn>4</mn></mphantom></mpadded><mn style="position:absolute;right:0;bottom:0;">4</mn></mpadded>';
    expect(mathmlForPrint(over)).toBe('<mpadded lspace="-1width" width="0.1px"><mn>4</mn></mpadded>');
  });

  it("leaves words in it alone", () => {
    const words = "<mtext>a style=&quot;color:#fff&quot; &lt; b</mtext>";
    expect(mathmlForPrint(words)).toBe(words);
  });
});
