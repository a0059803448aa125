// How pages are drawn, in the language of the typesetting engine (Typst). Everything that varies comes in as data;
// no text of a person ever becomes part of this.

/** Reads /kit.json and draws its pages. */
export const TEMPLATE = String.raw`
#let kit = json("/kit.json")
// In Chinese and Japanese the first family is for Latin letters alone: marks that both write belong to the second.
#let families(fonts, language) = if language in ("zh", "ja") and fonts.len() > 1 { ((name: fonts.first(), covers: "latin-in-cjk"), ..fonts.slice(1)) } else { fonts }
#set document(title: kit.title, date: none)
#set text(font: families(kit.fonts, kit.language), lang: kit.language, fallback: true)
#let inks = (text: rgb("#1d2420"), quiet: rgb("#4f5953"))
#let cuts = (
  cut: (paint: rgb("#555555"), dash: none),
  fold: (paint: rgb("#777777"), dash: "dashed"),
  drawn: (paint: rgb("#1d2420"), dash: none),
)
#let shade(n) = rgb("#ffffff").mix((rgb("#2f5d50"), n * 100%), (white, (1 - n) * 100%))
#let mark(body) = pdf.artifact(kind: "page", body)

// A drawing, and what it draws as text that is not seen: it can be found and copied, and is a formula to those who hear it.
#let set-formula(run, item, seen) = {
  let (width, ascent, depth, source, overhang) = run.drawn
  let size = (width: width * 1em, height: (ascent + depth) * 1em)
  let ink = inks.at(item.ink)
  // The engine lets a formula reach into the space between lines by 0.7 of it, above and below; that is made good.
  let reach = 0.7em * item.leading - overhang * 1em
  math.equation(alt: run.text, box(width: size.width, height: size.height + 2 * reach, baseline: depth * 1em + reach, if seen {
    place(bottom + left, dy: -depth * 1em - reach, text(font: families(item.fonts, item.language), size: source * 1em, fill: rgb("#0000"), hyphenate: false, run.text))
    place(top + left, dy: reach, mark(image(bytes(read(run.file).replace("currentColor", ink.to-hex())), format: "svg", alt: run.text, ..size)))
    if run.asked { place(bottom + left, dy: 0.12em - reach, mark(line(length: 100%, stroke: 0.05em + ink))) }
  }))
}

#let set-run(run, item, seen) = {
  if run.at("drawn", default: none) != none { return set-formula(run, item, seen) }
  let lines = run.text.split("\n").map(line => [#line]).join(linebreak())
  if run.look == "strong" { strong(lines) } else if run.look == "answer" { underline(offset: 0.18em, strong(lines)) } else { lines }
}

// What is only measured need neither be drawn nor be a paragraph.
#let set-text(item, size, hyphenate, seen: true) = {
  set text(size: size, fill: inks.at(item.ink), lang: item.language, dir: if item.direction == "rtl" { rtl } else { ltr }, hyphenate: hyphenate, font: families(item.fonts, item.language))
  set par(justify: false, leading: item.leading * 1em)
  set align(if item.align == "center" { center } else if (item.align == "start") == (item.direction == "ltr") { left } else { right })
  let runs = item.runs.map(run => set-run(run, item, seen)).join()
  if seen and item.heading == 0 { par(runs) } else { runs }
}

// A word that is wider than the box shows only when it is measured without one.
#let word-fits(item, size, hyphenate) = {
  let width = item.width * 1mm
  let word = text(size: size, lang: item.language, font: families(item.fonts, item.language), weight: if item.runs.any(r => r.look == "strong" or r.look == "answer") { 700 } else { 400 }, item.longest)
  if measure(word).width <= width { return true }
  hyphenate and measure(block(width: width, text(hyphenate: true, word))).height > measure(word).height * 1.5
}

#let formulae-fit(item, size) = item.runs.all(r => r.at("drawn", default: none) == none or r.drawn.width * size * 1pt <= item.width * 1mm)

#let fits(item, size, hyphenate) = {
  if not formulae-fit(item, size) { return false }
  let high = measure(block(width: item.width * 1mm, set-text(item, size * 1pt, hyphenate, seen: false))).height <= item.height * 1mm
  high and (item.longest == "" or size <= item.trial.wordFits or word-fits(item, size * 1pt, hyphenate))
}

// Needs a context only where something is to be tried.
#let choose(item) = {
  for size in item.trial.whole { if fits(item, size, false) { return (size: size, hyphenate: false, fits: true) } }
  if item.trial.sure != none { return (size: item.trial.sure, hyphenate: false, fits: true) }
  for size in item.trial.hyphenated { if fits(item, size, true) { return (size: size, hyphenate: true, fits: true) } }
  (size: item.least, hyphenate: true, fits: false)
}

#let draw-chosen(item, chosen) = {
  let body = set-text(item, chosen.size * 1pt, chosen.hyphenate)
  let lie = if item.lie == "top" { top } else if item.lie == "middle" { horizon } else { bottom }
  if not chosen.fits [#metadata(item.name) <cut>]
  if item.heading > 0 { body = { set text(size: 1em); show heading: it => it.body; heading(level: item.heading, outlined: true, body) } }
  block(width: item.width * 1mm, height: item.height * 1mm, clip: not chosen.fits, align(if chosen.fits { lie } else { top }, block(width: 100%, body)))
}

#let draw-text(item) = {
  if item.trial.whole == () and item.trial.sure != none { draw-chosen(item, choose(item)) } else { context draw-chosen(item, choose(item)) }
}

#let draw-box(item) = mark(rect(
  width: item.width * 1mm, height: item.height * 1mm,
  fill: if item.shade == none { none } else { shade(item.shade) },
  stroke: if item.frame { 0.2mm + rgb("#8b938e") } else { none },
))

// A region is given in shares of the picture.
#let draw-region(image, region) = {
  let covered = region.look == "covered"
  place(top + left,
    dx: (image.x + region.x * image.width) * 1mm, dy: (image.y + region.y * image.height) * 1mm,
    mark(rect(width: region.width * image.width * 1mm, height: region.height * image.height * 1mm,
      fill: if covered { shade(0.4) } else { none },
      stroke: if covered { 0.4mm + white } else { 0.6mm + inks.text })))
}

#let draw-picture(item) = block(width: item.width * 1mm, height: item.height * 1mm, clip: item.image.x < 0 or item.image.y < 0, {
  place(top + left, dx: item.image.x * 1mm, dy: item.image.y * 1mm,
    image(item.file, alt: item.alt, width: item.image.width * 1mm, height: item.image.height * 1mm, fit: "stretch"))
  if item.region != none { draw-region(item.image, item.region) }
})

#let draw(item) = {
  if item.kind == "line" {
    let look = cuts.at(item.look)
    let at = item.from.map(n => n * 1mm)
    let to = item.to.map(n => n * 1mm)
    place(top + left, mark(line(start: at, end: to, stroke: (paint: look.paint, thickness: item.width * 1mm, dash: look.dash))))
  } else {
    let body = if item.kind == "text" { draw-text(item) } else if item.kind == "box" { draw-box(item) } else { draw-picture(item) }
    place(top + left, dx: item.x * 1mm, dy: item.y * 1mm, if item.turned { rotate(180deg, reflow: false, origin: center + horizon, body) } else { body })
  }
}

#for (i, side) in kit.pages.enumerate() {
  set page(width: side.width * 1mm, height: side.height * 1mm, margin: 0mm)
  for item in side.items { draw(item) }
  if i + 1 < kit.pages.len() { pagebreak() }
}
`;
