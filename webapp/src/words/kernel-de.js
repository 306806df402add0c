/**
 * Sentences of the kernel on German: each with `{}` where the kernel puts a name or a number, in the
 * same order. What is not listed stays English. A test holds them against the kernel's source.
 *
 * @type {[string, string][]}
 */
export default [
  ["{} is {}; it must be {}.", "{} ist {}; erlaubt ist: {}."],
  ["{} must be a finite number.", "{} muss eine endliche Zahl sein."],
  ["{} must be a number, not {}.", "{} muss eine Zahl sein, nicht {}."],
  ["{} must be a whole number, not {}.", "{} muss eine ganze Zahl sein, nicht {}."],
  ["{} must be text, not {}.", "{} muss Text sein, nicht {}."],
  ["{} “{}” is not known. Choose: {}.", "{} „{}“ ist nicht bekannt. Zur Wahl stehen: {}."],
  [
    "{}: “{}” is not a number. Type digits, such as 0.4349.",
    "{}: „{}“ ist keine Zahl. Tippe Ziffern, etwa 0,4349.",
  ],
  [
    "{} has no spectrum: the observer judges it, not the camera.",
    "{} hat kein Spektrum: das Auge urteilt, nicht die Kamera.",
  ],
  [
    "A camera can judge only against a spectrum: take a white as the target, or a light whose spectrum was measured.",
    "Eine Kamera kann nur gegen ein Spektrum urteilen: nimm ein Weiß als Ziel oder ein Licht mit gemessenem Spektrum.",
  ],
  ["Every light holds.", "Jedes Licht passt."],
  ["Give a target white, or name the hero light.", "Nenne ein Ziel-Weiß oder das Leitlicht."],
  [
    "There are no lights yet: keep a reading first.",
    "Noch gibt es keine Lichter: hebe erst eine Messung auf.",
  ],
  [
    "{} and {} agree in x y but not in spectrum (SSI {}): colours under them may differ.",
    "{} und {} stimmen in x y überein, aber nicht im Spektrum (SSI {}): Farben können unter ihnen verschieden aussehen.",
  ],
  ["{}: {} to the eye, {} to the camera.", "{}: {} für das Auge, {} für die Kamera."],
  [
    "This pack eats {} stops; a lamp of the right colour may be the better tool.",
    "Diese Folien schlucken {} Blenden; eine Lampe der richtigen Farbe ist vielleicht das bessere Werkzeug.",
  ],
  [
    "A Duv of {} is beyond ±{}, where a CCT has no meaning. Type x y instead, and check the unit: Duv, not CC.",
    "Ein Duv von {} liegt jenseits von ±{}, wo eine CCT nichts bedeutet. Tippe stattdessen x y, und prüfe die Einheit: Duv, nicht CC.",
  ],
  [
    "Both {} and {} are given; one of them must be left out.",
    "{} und {} sind beide angegeben; eines davon muss wegbleiben.",
  ],
  [
    "Duv {} is far off the black-body line; the CCT says little there, trust x y and your eyes.",
    "Duv {} ist weit von der Linie des schwarzen Strahlers; die CCT sagt dort wenig, traue x y und deinen Augen.",
  ],
  [
    "Give {} or {}, not both: they are one amount.",
    "Gib {} oder {} an, nicht beides: es ist dieselbe Menge.",
  ],
  [
    "No green-magenta given, so Duv 0 is assumed; a CCT alone cannot tell green from magenta. Type the Duv, or x y.",
    "Kein Grün-Magenta angegeben, also gilt Duv 0; eine CCT allein unterscheidet Grün nicht von Magenta. Tippe den Duv oder x y.",
  ],
  [
    "No light has x {}, y {}: it lies outside the colours the eye can see. Check both, and that these are x y and not u′ v′.",
    "Kein Licht hat x {}, y {}: das liegt außerhalb der sichtbaren Farben. Prüfe beide, und dass es x y sind und nicht u′ v′.",
  ],
  [
    "So far from the black-body line (Duv {}) a light has no CCT; it is a colour, and gel for white will not do.",
    "So weit von der Linie des schwarzen Strahlers (Duv {}) hat ein Licht keine CCT; es ist eine Farbe, und Folie für Weiß hilft nicht.",
  ],
  [
    "The spectrum covers {}–{} nm; towards 380 and 780 nm its last values are carried on.",
    "Das Spektrum reicht von {} bis {} nm; bis 380 und 780 nm werden die letzten Werte fortgeführt.",
  ],
  [
    "This light is warmer or cooler than any white: no CCT can be given for it.",
    "Dieses Licht ist wärmer oder kühler als jedes Weiß: eine CCT lässt sich nicht angeben.",
  ],
  [
    "Type x and y, or a CCT with its Duv, or load a spectrum.",
    "Tippe x und y oder eine CCT mit Duv, oder lade ein Spektrum.",
  ],
  [
    "x + y is {}; it cannot exceed 1. Check both for a typo.",
    "x + y ist {}; mehr als 1 geht nicht. Prüfe beide auf Tippfehler.",
  ],
  [
    "x y with three decimals leaves the CCT open by some 14 K; type four if the meter shows them.",
    "x y mit drei Stellen lässt die CCT um etwa 14 K offen; tippe vier, wenn das Messgerät sie zeigt.",
  ],
  ["{} is missing: {} alone says no colour.", "{} fehlt: {} allein sagt keine Farbe."],
  [
    "{} is {}; a light that can be read gives more than zero.",
    "{} ist {}; ein Licht, das sich messen lässt, gibt mehr als null.",
  ],
  [
    "{} lx is more than direct sun at noon gives; check the number and its unit.",
    "{} lx ist mehr, als die Mittagssonne gibt; prüfe Zahl und Einheit.",
  ],
  ["The gel needs a name.", "Die Folie braucht einen Namen."],
  [
    "There is no gel named “{}” in the kit. Pick one from Kit, or add it there.",
    "Im Koffer ist keine Folie namens „{}“. Wähle eine aus, oder füge sie dort hinzu.",
  ],
  [
    "These gels are nominal: computed from physics under their trade names. Real ones differ by make, batch and age; measure yours and they take over.",
    "Diese Folien sind nominell: aus der Physik berechnet, unter den Namen des Gewerbes. Wirkliche weichen nach Fabrikat, Charge und Alter ab; miss deine, und sie treten an ihre Stelle.",
  ],
  [
    "No spectrum of a lamp reaches x {}, y {}: it is close to a single wavelength. Measure a spectrum to go on.",
    "Kein Lampenspektrum erreicht x {}, y {}: das ist fast eine einzige Wellenlänge. Miss ein Spektrum, um weiterzukommen.",
  ],
];

/** Phrases inside an offset or a drift, such as "34 mired too cool, a hair green". */
/** @type {[RegExp, string][]} */
export const PHRASES = [
  [/\bmired too warm\b/g, "mired zu warm"],
  [/\bmired too cool\b/g, "mired zu kühl"],
  [/\bmired warmer\b/g, "mired wärmer"],
  [/\bmired cooler\b/g, "mired kühler"],
  [/\bas warm as the target\b/g, "so warm wie das Ziel"],
  [/\bno CCT to compare\b/g, "keine CCT zum Vergleichen"],
  [/\bstrongly (green|magenta)\b/g, "stark $1"],
  [/\bclearly (green|magenta)\b/g, "deutlich $1"],
  [/\ba touch (green|magenta)\b/g, "etwas $1"],
  [/\ba hair (green|magenta)\b/g, "einen Hauch $1"],
  [/\bby comparison\b/g, "im Vergleich"],
  [/\bno tint\b/g, "kein Farbstich"],
  [/\bsame colour\b/g, "gleiche Farbe"],
  [/\bsame amount of light\b/g, "gleich viel Licht"],
  [/\bstops? brighter\b/g, "Blenden heller"],
  [/\bstops? darker\b/g, "Blenden dunkler"],
  [/\bgreen\b/g, "grün"],
];
