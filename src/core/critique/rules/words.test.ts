import { expect, it } from "vitest";
import { fixed, list, PICTURE, pair, picture, ruleCases, statement } from "../../../../tests/support/critique-cases.ts";
import { critiqueFact } from "../critique-fact.ts";

ruleCases(
  "goes-stale",
  [
    pair("Largest telescope currently in use on the hill", "the reflector"),
    pair("The newest planet probe on its way", "the orbiter"),
    statement("There are [88] constellations at the moment."),
    pair("Wie viele Planeten sind derzeit bekannt?", "acht"),
    pair("Der bisher entfernteste Stern", "im Haufen"),
    pair("Combien de lunes connaît-on actuellement à Jupiter ?", "beaucoup"),
    pair("¿Cuántas lunas de Júpiter se conocen actualmente?", "muchas"),
    pair("Quante lune di Giove si conoscono attualmente?", "molte"),
    pair("現在知られている木星の衛星の数", "多数"),
    pair("目前已知的木星卫星", "很多"),
    pair("Entfernteste derzeit bekannte Galaxie", "GN-z11"),
    pair("Current number of known moons of Jupiter", "many"),
    pair("Heutiger Name der Sternwarte auf dem Hügel", "Altes Haus"),
    pair("Сколько спутников Юпитера известно в настоящее время?", "много"),
    pair("현재 알려진 목성의 위성", "많다"),
    pair("Obecnie najjaśniejsza planeta na niebie", "Wenus"),
    pair("Şu anki gözlemevi müdürü", "Deniz Tepe"),
    pair("Ποιος είναι σήμερα ο φύλακας του θόλου;", "ο Νίκος"),
    pair("مدير المرصد حاليًا", "سامي"),
    pair("מנהל המצפה כיום", "דן"),
    pair("वर्तमान में वेधशाला का प्रमुख", "मोहन"),
    pair("หัวหน้าหอดูดาวปัจจุบัน", "คุณดาว"),
    pair("站长最近换成了谁？", "林远"),
    pair("Who runs the dome at the moment?", "Mira", { language: "fr" }),
  ],
  [
    pair("Brightest star of Lyra", "Vega"),
    pair("Name of the ocean currents", "the Gulf Stream"),
    pair("How many moons of Jupiter were known as of 2020?", "79"),
    pair("Wie viele Monde waren im Jahr derzeit (2020) bekannt?", "79"),
    pair("What is a recent-looking crater called?", "Tycho"),
    pair("Who came to the hill yesterday in the story?", "a guest"),
    pair("Étoile la plus brillante de la Lyre", "Véga"),
    pair("Nowhere is darker than", "the Coalsack"),
    pair("現在位置を示す線", "子午線"),
    pair("Actual diameter of Mars in km", "6779"),
    pair("What is the latest date on which Easter can fall?", "25 April"),
    pair("Which word means “currently” in German?", "derzeit"),
    pair("Was bedeutet „derzeit“ auf Englisch?", "at present"),
    pair("currently", "derzeit"),
    pair("What is the current through the heater?", "two ampere"),
    pair("Was sieht man im Moment des zweiten Kontakts?", "den Diamantring"),
    pair("What is seen at the moment of second contact?", "the diamond ring"),
    pair("离太阳最近的行星是哪一颗？", "水星"),
    pair("月球轨道离地球最近处叫什么？", "近地点"),
    pair("望遠鏡の現在地を知らせる機器は？", "受信機"),
    pair("2024年現在知られている木星の衛星の数", "95個"),
    pair("截至2024年目前已知的木星卫星", "95颗"),
  ],
);

const described = { pictureAlt: "A lyre of five stars", pictureSource: "drawn by the guide", pictureLicence: "CC0" };

ruleCases(
  "undescribed-picture",
  [
    picture("Lyra"),
    picture("Leier"),
    picture("こと座"),
    picture("Lyra", { pictureAlt: "A lyre of five stars" }),
    picture("Lyra", { pictureSource: "drawn by the guide" }),
    pair("Brightest star of Lyra", "Vega", { picture: PICTURE }),
    pair("نجم", "Vega", { picture: PICTURE, source: "own notes" }),
    statement("Vega is in [Lyra].", { picture: PICTURE, pictureAlt: "  " }),
  ],
  [
    picture("Lyra", described),
    picture("Leier", described),
    picture("こと座", described),
    picture("Lyra", { pictureAlt: "A lyre of five stars", source: "star catalogue" }),
    pair("Brightest star of Lyra", "Vega"),
    pair("Picture of the night", "star trails"),
    pair("Brightest star of Lyra", "Vega", { picture: PICTURE, ...described }),
    statement("Vega is in [Lyra].", { picture: PICTURE, ...described }),
  ],
);

ruleCases(
  "damaged-text",
  [
    pair("Constellation of the Herdsman", "BoÃ¶tes"),
    pair("GrÃ¶ÃŸter Planet", "Jupiter"),
    pair("Herdsman&#39;s constellation", "Bo&ouml;tes"),
    pair("Brightest star  of Lyra", "Vega"),
    pair("Herdsman", "Boo\u0308tes"),
    pair("Brightest star of Lуra", "Vega"),
    pair("<b>Brightest</b> star of Lyra", "Vega"),
    pair("Brightest star of Lyra", "Ve\u200bga"),
    pair("Größter Planet", "Jupiter ."),
    pair("Constellation of the Herdsman", "Bo\ufffdtes"),
    pair("Вега ,  звезда", "Лира"),
    statement("Vega&#91;1&#93; is in [Lyra]."),
  ],
  [
    pair("Constellation of the Herdsman", "Boötes"),
    pair("Größter Planet", "Jupiter"),
    pair("Étoile de la Lyre ?", "Véga !", { language: "fr" }),
    pair("Stars with 0 < parallax < 1", "far away"),
    pair("α Лиры", "Вега"),
    pair("Johnson & Morgan system", "U, B and V"),
    pair("こと座の一等星", "ベガ"),
    pair("النسر الواقع", "Vega"),
    pair("Ångström unit", "Å"),
    pair("Line one\nline two", "Vega"),
    statement("Which star? [Vega]!"),
  ],
);

it.each([
  ["BoÃ¶tes", "Boötes"],
  ["GrÃ¶ÃŸe", "Größe"],
  ["Alpha â€“ Lyrae", "Alpha – Lyrae"],
  ["ãƒ™ã‚¬", "ベガ"],
  ["Bo&ouml;tes &amp; Lyra", "Boötes & Lyra"],
  ["Lуra", "Lyra"],
  ["Boo\u0308tes", "Boötes"],
  ["Vega  is <i>blue</i> .", "Vega is blue."],
])("mends %s", (broken, whole) => {
  expect(fixed(pair("Which?", broken), "damaged-text")).toMatchObject({ answer: whole });
});

it("offers no mending that would make a gap of a sign, or leave a side empty", () => {
  const fixes = [statement("Vega&#91;1&#93; is in [Lyra]."), pair("Which?", "<b></b>"), list("Two", ["Vega", "<p>"])]
    .flatMap(critiqueFact)
    .filter(({ rule }) => rule === "damaged-text")
    .map(({ fix }) => fix);
  expect(fixes).toEqual([null, null, null]);
});
