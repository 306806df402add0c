/**
 * Sentences of the kernel on German: each with `{}` where the kernel puts a name or a number, in
 * the same order, or by its number, counted from 0. A test holds them against the kernel's source,
 * and another that nothing the kernel is known to say stays English.
 *
 * @type {[string, string][]}
 */
export const SENTENCES = [
  // What a metric rests on.
  [
    "CIE 13.3-1995 with the skin sample of JIS Z 8726",
    "CIE 13.3-1995 mit dem Hautmuster aus JIS Z 8726",
  ],
  ["CIE 224:2017, the same in ANSI/IES TM-30-20", "CIE 224:2017, gleich in ANSI/IES TM-30-20"],
  [
    "CIEDE2000 (ISO/CIE 11664-6:2014) on the chart of EBU Tech 3355 (TLCI-2012), 2013",
    "CIEDE2000 (ISO/CIE 11664-6:2014) auf der Tafel von EBU Tech 3355 (TLCI-2012), 2013",
  ],
  ["none (spectra are compared)", "keiner (Spektren werden verglichen)"],
  [
    "TLCI-2012 standard camera and BT.709 display",
    "Normkamera von TLCI-2012 und Bildschirm nach BT.709",
  ],
  ["CIE 1964 10° (colour temperature: CIE 1931 2°)", "CIE 1964 10° (Farbtemperatur: CIE 1931 2°)"],
  [
    "CIE 1931 2°, each light's own white adapted to",
    "CIE 1931 2°, an das Weiß jedes Lichts angepasst",
  ],
  [
    "both adapted to, or balanced for, the first light",
    "beide an das erste Licht angepasst oder darauf abgeglichen",
  ],
  ["SSI of {} against {}", "SSI von {} gegen {}"],
  ["SSI, black body 3200 K", "SSI, schwarzer Strahler 3200 K"],
  ["SSI, matching reference", "SSI, passende Referenz"],
  ["CIE illuminant D55", "CIE-Lichtart D55"],
  // Of the worker around the kernel.
  [
    "This phone has too little memory left for this question. Close other tabs and try again.",
    "Diesem Telefon fehlt Speicher für diese Frage. Schließe andere Tabs, und versuche es noch einmal.",
  ],
  [
    "The kernel stumbled over this question ({}).",
    "Der Rechenkern ist über diese Frage gestolpert ({}).",
  ],
  ["Nothing you entered is lost.", "Nichts von deinen Eingaben ist verloren."],
  ["Nothing to convert: give one of {}.", "Nichts umzurechnen: gib eines davon an: {}."],
  ["A ratio needs two lights: illuminance and against.", "Ein Verhältnis braucht zwei Lichter."],
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
  // What every field may complain of.
  [
    "{} must be a group of named fields, not {}.",
    "{} muss eine Gruppe benannter Felder sein, nicht {}.",
  ],
  ["“{}” is not a field here. Known are: {}.", "„{}“ ist hier kein Feld. Bekannt sind: {}."],
  ["{} is missing.", "{} fehlt."],
  ["between {} and {}", "zwischen {} und {}"],
  ["{} or less", "höchstens {}"],
  ["{} or more", "mindestens {}"],
  ["{} value {}", "{}, Wert {}"],
  ["{} has {} characters; at most {} fit.", "{} hat {} Zeichen; höchstens {} passen."],
  ["{} must be a list, not {}.", "{} muss eine Liste sein, nicht {}."],
  ["{} has {} entries; at most {} fit.", "{} hat {} Einträge; höchstens {} passen."],
  ["{} must hold names only.", "{} darf nur Namen enthalten."],
  ["Give {} or {}, not both of them.", "Gib {} oder {} an, nicht beides."],
  ["Give a gamut, or {}, not both.", "Gib einen Farbraum oder {} an, nicht beides."],
  ["{}_m (or {}_ft) is missing.", "{}_m (oder {}_ft) fehlt."],
  ["light {}", "Licht {}"],
  // A reading, a white, a tolerance.
  ["A CCT of {} K is outside {}–{} K.", "Eine CCT von {} K liegt außerhalb von {}–{} K."],
  ["The target CCT", "Die CCT des Ziels"],
  ["The target Duv", "Der Duv des Ziels"],
  ["The tolerance in steps", "Die Toleranz in Schritten"],
  [
    "The range ends at {} K, below its start at {} K.",
    "Der Bereich endet bei {} K, unter seinem Anfang bei {} K.",
  ],
  ["A gamut needs one colour or more.", "Ein Farbraum braucht mindestens eine Farbe."],
  ["The lowest CCT", "Die niedrigste CCT"],
  ["The highest CCT", "Die höchste CCT"],
  // Spectra.
  [
    "The spectrum is empty: give at least its wavelengths and values.",
    "Das Spektrum ist leer: gib wenigstens Wellenlängen und Werte an.",
  ],
  [
    "The spectrum has {} wavelengths but {} values; each wavelength needs one value.",
    "Das Spektrum hat {} Wellenlängen, aber {} Werte; jede Wellenlänge braucht einen Wert.",
  ],
  [
    "The spectrum has {} samples; at most {} fit.",
    "Das Spektrum hat {} Werte; höchstens {} passen.",
  ],
  [
    "Wavelength {} ({} nm) does not rise above the one before it ({} nm); sort them from short to long.",
    "Wellenlänge {} ({} nm) liegt nicht über der vor ihr ({} nm); sortiere sie von kurz nach lang.",
  ],
  [
    "The spectrum covers {}–{} nm; colour needs at least {}–{} nm.",
    "Das Spektrum reicht von {} bis {} nm; Farbe braucht mindestens {}–{} nm.",
  ],
  [
    "The samples are up to {} nm apart; colour needs {} nm or less.",
    "Die Werte liegen bis zu {} nm auseinander; Farbe braucht {} nm oder weniger.",
  ],
  [
    "The spectrum holds no light: every value is zero or less.",
    "Das Spektrum enthält kein Licht: jeder Wert ist null oder kleiner.",
  ],
  [
    "All of its light lies outside {}–{} nm, where the eye sees.",
    "All sein Licht liegt außerhalb von {}–{} nm, wo das Auge sieht.",
  ],
  [
    "The value at {} nm is {}; light cannot be negative.",
    "Der Wert bei {} nm ist {}; Licht kann nicht negativ sein.",
  ],
  // Green and magenta, drift, ratios.
  ["more than any CC gel can take away", "mehr, als eine CC-Folie wegnehmen kann"],
  ["no green or magenta needed", "weder Grün noch Magenta nötig"],
  ["add {} CC {}", "{0} CC {1} dazu"],
  ["nothing to compare", "nichts zu vergleichen"],
  ["1:1, level", "1:1, gleich"],
  // A whole set.
  [
    "What {} can be dialled to was not stated: {}–{} K is assumed.",
    "Worauf sich {} einstellen lässt, ist nicht gesagt: {}–{} K wird angenommen.",
  ],
  [
    "A range to dial is given, but “may” does not say dial.",
    "Ein Bereich zum Einstellen ist angegeben, aber einstellen ist hier nicht erlaubt.",
  ],
  [
    "“{}” is not something a light may do. Choose: gel, dial.",
    "„{}“ kann mit einem Licht nicht getan werden. Zur Wahl stehen: gel, dial.",
  ],
  ["The lowest white", "Das niedrigste Weiß"],
  ["The highest white", "Das höchste Weiß"],
  [
    "The whites end at {} K, below their start at {} K.",
    "Die Weiß enden bei {} K, unter ihrem Anfang bei {} K.",
  ],
  [
    "Give the step in K or in mired, not both.",
    "Gib den Schritt in K oder in mired an, nicht beides.",
  ],
  ["The step in mired", "Der Schritt in mired"],
  ["The step in K", "Der Schritt in K"],
  ["The tint limit in Duv", "Die Grenze des Farbstichs in Duv"],
  ["The tint step in Duv", "Der Schritt des Farbstichs in Duv"],
  [
    "These bounds and steps make {} whites; at most {} are tried. Take a wider step or closer bounds.",
    "Diese Grenzen und Schritte ergeben {} Weiß; höchstens {} werden versucht. Nimm größere Schritte oder engere Grenzen.",
  ],
  [
    "Every combination was weighed: nothing better exists within these bounds.",
    "Jede Kombination wurde abgewogen: innerhalb dieser Grenzen gibt es nichts Besseres.",
  ],
  [
    "These plans are the best of their kind; whether fewer than {} lights could stay out was not proved.",
    "Diese Pläne sind die besten ihrer Art; ob weniger als {} Lichter daneben bleiben könnten, ist nicht bewiesen.",
  ],
  [
    "There are too many combinations to weigh all: each plan says how much light a better one might save at most.",
    "Es sind zu viele Kombinationen, um alle abzuwägen: jeder Plan sagt, wie viel Licht ein besserer höchstens sparen könnte.",
  ],
  ["leave as it is", "so lassen"],
  ["take off {}", "{} abnehmen"],
  ["hang {}", "{} davor"],
  ["no gel", "keine Folie"],
  [
    "Give one pack, or null, for each light.",
    "Gib für jedes Licht eine Lage Folien an, oder keine.",
  ],
  ["A pack is a list of gel names.", "Eine Lage ist eine Liste von Foliennamen."],
  // The book, links and codes.
  [
    "This link has {} characters; some messengers cut it. Share the file, or one setup.",
    "Dieser Link hat {} Zeichen; manche Dienste schneiden ihn ab. Teile die Datei oder eine Einstellung.",
  ],
  ["Name at least one book to merge.", "Nenne wenigstens ein Buch."],
  [
    "There is no book here: open one, or keep a reading first.",
    "Hier ist kein Buch: öffne eines, oder hebe erst eine Messung auf.",
  ],
  ["an empty book", "ein leeres Buch"],
  [
    "The book has no white for “{}”: no target was kept with it, and its hero light has no reading.",
    "Das Buch hat kein Weiß für „{}“: kein Ziel wurde damit aufgehoben, und das Leitlicht hat keine Messung.",
  ],
  [
    "There is no link here: paste the whole address.",
    "Hier ist kein Link: setze die ganze Adresse ein.",
  ],
  ["{} of {} scanned; still missing: {}.", "{} von {} gelesen; es fehlen noch: {}."],
  ["All {} codes are here.", "Alle {} Codes sind da."],
  ["There is no reading of this light yet.", "Von diesem Licht gibt es noch keine Messung."],
  ["no white was kept", "kein Weiß aufgehoben"],
  [
    "Open the file that Evenkelvin exported, or export it again where it came from.",
    "Öffne die Datei, die Evenkelvin ausgegeben hat, oder gib sie dort neu aus, wo sie herkommt.",
  ],
  ["The text has {} characters; at most {} fit.", "Der Text hat {} Zeichen; höchstens {} passen."],
  ["There is nothing in it.", "Es steht nichts darin."],
  ["It holds {}, which is not a number in JSON.", "Es enthält {}, was in JSON keine Zahl ist."],
  [
    "It holds a number with thousands of digits.",
    "Es enthält eine Zahl mit Tausenden von Ziffern.",
  ],
  ["It is nested more than {} deep.", "Es ist mehr als {} Ebenen tief verschachtelt."],
  ["This book does not say its version.", "Dieses Buch nennt seine Version nicht."],
  [
    "This book has version {}, written by a newer Evenkelvin; this one reads up to version {}. Update the app, then open it again.",
    "Dieses Buch hat Version {}, von einem neueren Evenkelvin geschrieben; dieses liest bis Version {}. Aktualisiere die App und öffne es noch einmal.",
  ],
  ["Version {} of the book was never in use.", "Version {} des Buchs war nie in Gebrauch."],
  ["This is not a book of Evenkelvin.", "Das ist kein Buch von Evenkelvin."],
  [
    "The book was changed after it was written: its contents do not give the hash that it states. Compare it with the place it came from.",
    "Das Buch wurde nach dem Schreiben geändert: sein Inhalt ergibt nicht die Prüfsumme, die es nennt. Vergleiche es mit seiner Quelle.",
  ],
  [
    "Together they have {} entries; a book holds at most {}.",
    "Zusammen haben sie {} Einträge; ein Buch fasst höchstens {}.",
  ],
  [
    "{} entries had the id of another with different content; both are kept.",
    "{} Einträge hatten die Kennung eines anderen mit anderem Inhalt; beide bleiben.",
  ],
  ["“{}” is not a date and time with its zone.", "„{}“ ist kein Datum mit Uhrzeit und Zone."],
  ["The book has no {} with the id “{}”.", "Das Buch hat nichts dieser Art mit der Kennung „{1}“."],
  [
    "A text holds half a character (a lone surrogate).",
    "Ein Text enthält ein halbes Zeichen (ein einzelnes Surrogat).",
  ],
  ["This cannot be written as JSON: {}.", "Das lässt sich nicht als JSON schreiben: {}."],
  ["must be {}, not {}", "muss {} sein, nicht {}"],
  [
    "is out of bounds: it must be between {} and {}",
    "liegt außerhalb: erlaubt ist zwischen {} und {}",
  ],
  ["has {} {}; at most {} fit", "hat {} {}; höchstens {} passen"],
  ["lacks the field {}", "hat das Feld {} nicht"],
  ["has a field “{}” that does not belong there", "hat ein Feld „{}“, das nicht dorthin gehört"],
  ["“{}” is not {}", "„{}“ ist nicht {}"],
  ["Ask for it again, or for the file.", "Bitte noch einmal darum oder um die Datei."],
  [
    "This is too large for a link ({} characters; at most {}). Share one setup, or the file.",
    "Das ist zu groß für einen Link ({} Zeichen; höchstens {}). Teile eine Einstellung oder die Datei.",
  ],
  ["The link is longer than {} characters.", "Der Link ist länger als {} Zeichen."],
  [
    "This is one code of a series: scan the others too.",
    "Das ist ein Code einer Reihe: lies auch die anderen.",
  ],
  ["This is not a link of Evenkelvin (at “{}”).", "Das ist kein Link von Evenkelvin (bei „{}“)."],
  [
    "The link ends too early: it was cut on the way.",
    "Der Link endet zu früh: er wurde unterwegs abgeschnitten.",
  ],
  ["The link was changed on the way.", "Der Link wurde unterwegs verändert."],
  [
    "The link was cut or changed on the way.",
    "Der Link wurde unterwegs abgeschnitten oder verändert.",
  ],
  ["The link does not hold text.", "Der Link enthält keinen Text."],
  [
    "The link unfolds to more than {} characters.",
    "Der Link entfaltet sich auf mehr als {} Zeichen.",
  ],
  ["Something was added to the link on the way.", "Dem Link wurde unterwegs etwas angehängt."],
  [
    "This would take {} codes; at most {} make a series. Share one setup, or the file.",
    "Das bräuchte {} Codes; höchstens {} bilden eine Reihe. Teile eine Einstellung oder die Datei.",
  ],
  [
    "This is not a code of a series of Evenkelvin: scan it again.",
    "Das ist kein Code einer Reihe von Evenkelvin: lies ihn noch einmal.",
  ],
  [
    "This code says it is number {} of {}: scan it again.",
    "Dieser Code sagt, er sei Nummer {} von {}: lies ihn noch einmal.",
  ],
  [
    "This code belongs to another series: scan one series at a time.",
    "Dieser Code gehört zu einer anderen Reihe: lies eine nach der anderen.",
  ],
  [
    "Code {} was read twice and differs: scan it again.",
    "Code {} wurde zweimal verschieden gelesen: lies ihn noch einmal.",
  ],
  ["No code was scanned yet.", "Noch ist kein Code gelesen."],
  ["the target of the setup", "das Ziel der Einstellung"],
  ["the target of its latest reading", "das Ziel ihrer letzten Messung"],
  ["the hero light as it was last read", "das Leitlicht, wie es zuletzt gemessen wurde"],
  // Cautions of a report.
  [
    "Tungsten heads run hot: let them cool before re-gelling, keep gel clear of the lens and check it for scorching.",
    "Kunstlichtköpfe werden heiß: lass sie vor dem Folienwechsel abkühlen, halte Folie von der Linse fern und sieh nach Brandspuren.",
  ],
  [
    "HMI and metal-halide heads emit UV without their safety glass: never run one with cracked or missing glass, and keep gel clear of the hot lens.",
    "HMI- und Halogen-Metalldampf-Köpfe strahlen ohne Schutzglas UV ab: nie mit gesprungenem oder fehlendem Glas betreiben, und Folie von der heißen Linse fernhalten.",
  ],
  [
    "Plasma heads run hot and emit UV without their glass: do not open a running head.",
    "Plasmaköpfe werden heiß und strahlen ohne Glas UV ab: einen laufenden Kopf nicht öffnen.",
  ],
  [
    "Fluorescent tubes hold mercury: pack used and broken ones apart.",
    "Leuchtstoffröhren enthalten Quecksilber: alte und zerbrochene getrennt verpacken.",
  ],
  [
    "Sodium street and deck lights are not ours to open or gel: ask whoever runs them.",
    "Natriumlampen an Straße und Deck dürfen wir nicht öffnen oder mit Folie versehen: frage, wer sie betreibt.",
  ],
  [
    "Flash heads store a deadly charge: switch off and discharge before changing tubes.",
    "Blitzköpfe speichern eine tödliche Ladung: vor dem Röhrenwechsel abschalten und entladen.",
  ],
  [
    "Never look at the sun, nor aim a meter at it by eye.",
    "Nie in die Sonne sehen, und auch das Messgerät nicht mit dem Auge auf sie richten.",
  ],
  [
    "Gel, frames and anything in the wind need safety bonds and a second pair of hands.",
    "Folie, Rahmen und alles im Wind braucht Sicherungen und ein zweites Paar Hände.",
  ],
  [
    "Never gel glass that traps heat (insulating, laminated, wired, coated or leaded) without asking the building; tie gel and frames for the wind, and keep exits and vents free.",
    "Nie Glas mit Folie bekleben, das Hitze staut (Isolier-, Verbund-, Draht-, beschichtetes oder Bleiglas), ohne das Haus zu fragen; Folie und Rahmen gegen Wind sichern, Ausgänge und Lüftungen frei halten.",
  ],
  [
    "Work at height, rigging and mains power: by those licensed for it, by the local code.",
    "Arbeit in der Höhe, Rigging und Netzstrom: nur durch Befugte, nach den örtlichen Vorschriften.",
  ],
  [
    "Gel figures are nominal unless measured: re-check each light once its gel hangs.",
    "Folienwerte sind nominell, wenn nicht gemessen: prüfe jedes Licht nach, sobald seine Folie hängt.",
  ],
  // Dialling and driving.
  ["Dial this, then read the lamp.", "Stelle das ein, dann miss die Lampe."],
  ["It holds: leave it.", "Es passt: so lassen."],
  [
    "An earlier setting held: go back to it.",
    "Eine frühere Einstellung passte: geh zu ihr zurück.",
  ],
  [
    "The lamp has no finer setting than those tried: this one came closest.",
    "Feiner als versucht lässt sich die Lampe nicht einstellen: diese Einstellung kam am nächsten.",
  ],
  [
    "{} steps out: dial this, then read again.",
    "{} Schritte daneben: stelle das ein, dann miss noch einmal.",
  ],
  [
    "The target is out of this lamp's reach: {} steps remain.",
    "Das Ziel liegt außerhalb dessen, was diese Lampe erreicht: {} Schritte bleiben.",
  ],
  ["Hang {} to close them.", "{} davor schließt sie."],
  ["Give a gamut or a range, not both.", "Gib einen Farbraum oder einen Bereich an, nicht beides."],
  [
    "The matrix of a correction has two rows of two numbers.",
    "Die Matrix einer Korrektur hat zwei Zeilen mit zwei Zahlen.",
  ],
  ["The offset of a correction has two numbers.", "Der Versatz einer Korrektur hat zwei Zahlen."],
  [
    "No lamp answers to its dial like this matrix: forget it and start anew.",
    "So antwortet keine Lampe auf ihre Einstellung: vergiss es, und fang neu an.",
  ],
  [
    "Read each primary alone at full level first.",
    "Miss zuerst jede Primärfarbe allein bei voller Stufe.",
  ],
  [
    "How much this primary gives is missing: read its lux at full level.",
    "Es fehlt, wie viel diese Primärfarbe gibt: miss ihre Lux bei voller Stufe.",
  ],
  [
    "Spectral similarity needs the spectrum of every primary; by x y and lux only the most light can be found.",
    "Ähnlichkeit des Spektrums braucht das Spektrum jeder Primärfarbe; aus x y und Lux lässt sich nur das meiste Licht finden.",
  ],
  ["primary {}", "Primärfarbe {}"],
  [
    "Levels are parts of the full light of each primary; a lamp whose dial does not follow its light needs them read at these settings.",
    "Stufen sind Teile des vollen Lichts jeder Primärfarbe; folgt der Regler einer Lampe nicht ihrem Licht, so miss sie bei diesen Einstellungen.",
  ],
  [
    "A target without a CCT has no reference to be like: ask for the most light instead.",
    "Ein Ziel ohne CCT hat keine Referenz, der es gleichen könnte: frage stattdessen nach dem meisten Licht.",
  ],
  // Exposure.
  ["illuminance_lx, illuminance_fc or exposure_lx_s", "Licht in lx, fc oder lx·s"],
  ["time_s, or shutter_deg with fps", "eine Zeit oder ein Winkel mit Bildrate"],
  ["f_number or t_number", "eine Blende oder T-Blende"],
  [
    "Give a steady light (lx) or a flash (lx·s), not both of them.",
    "Gib ein Dauerlicht (lx) oder einen Blitz (lx·s) an, nicht beides.",
  ],
  [
    "A T-number holds the loss of the lens already: leave it out.",
    "Eine T-Blende enthält den Verlust des Objektivs schon: lass ihn weg.",
  ],
  ["{}: “{}” is not a shutter time.", "{}: „{}“ ist keine Verschlusszeit."],
  [
    "A frame rate is solved from a shutter angle.",
    "Eine Bildrate ergibt sich aus einem Verschlusswinkel.",
  ],
  ["A flash does not depend on the shutter.", "Ein Blitz hängt nicht vom Verschluss ab."],
  [
    "{} is given already: leave it out of known for it to be solved.",
    "{} ist schon angegeben: lass es weg, wenn es gesucht ist.",
  ],
  [
    "Still open: {}. One figure can be solved at a time.",
    "Noch offen: {}. Eine Größe auf einmal lässt sich bestimmen.",
  ],
  [
    "This exposure cannot be solved as it stands.",
    "Diese Belichtung lässt sich so nicht bestimmen.",
  ],
  ["{} lx·s a burst", "{} lx·s je Blitz"],
  ["{} frames a second", "{} Bilder in der Sekunde"],
  ["{} short of light", "{} zu wenig Licht"],
  ["right as it is", "richtig, wie es ist"],
  ["{} of filter (ND {})", "{} Filter (ND {})"],
  [
    "The shutter would be open for {}°, longer than a frame at {} frames a second: add light, open the lens or raise the ISO.",
    "Der Verschluss wäre {}° offen, länger als ein Bild bei {} Bildern in der Sekunde: mehr Licht, Blende auf oder ISO höher.",
  ],
  [
    "Too dark without any filter: add light, open the lens or raise the ISO.",
    "Auch ohne Filter zu dunkel: mehr Licht, Blende auf oder ISO höher.",
  ],
  [
    "Few lenses open this far: add light, or raise the ISO or the time.",
    "So weit öffnen wenige Objektive: mehr Licht, oder ISO oder Zeit höher.",
  ],
  [
    "Few lenses close this far: take a neutral density filter.",
    "So weit schließen wenige Objektive: nimm ein Graufilter.",
  ],
  [
    "A shutter this short can cut a burst off, or cover a part of the frame: test it.",
    "Ein so kurzer Verschluss kann einen Blitz abschneiden oder einen Teil des Bildes verdecken: probiere es.",
  ],
  [
    "distance_m is missing: how far the lamp is where it was read.",
    "Der Abstand fehlt: wie weit die Lampe bei der Messung entfernt war.",
  ],
  [
    "Ask one thing: a distance (at_m), a light (wanted_lx) or a loss (lose_stops).",
    "Frage eines: einen Abstand, ein Licht oder einen Verlust.",
  ],
  [
    "illuminance_lx is missing: what the light reads now.",
    "Das Licht fehlt: was jetzt gemessen wird.",
  ],
  [
    "Inverse square: for a bare lamp further away than five times its width. A lens, a reflector or a large frame falls off more slowly; read it there.",
    "Abstandsgesetz: für eine blanke Lampe, weiter weg als das Fünffache ihrer Breite. Linse, Reflektor oder großer Rahmen fallen langsamer ab; miss dort.",
  ],
  [
    "At {} m the source of {} m is nearer than five times its width: it falls off more slowly than the inverse square. Read it there.",
    "Bei {} m ist die Quelle von {} m näher als das Fünffache ihrer Breite: sie fällt langsamer ab als nach dem Abstandsgesetz. Miss dort.",
  ],
  [
    "Mind the heat on skin, cloth and gel when a lamp comes nearer.",
    "Achte auf die Hitze auf Haut, Stoff und Folie, wenn eine Lampe näher kommt.",
  ],
  [
    "There is no light number {} to be the key.",
    "Es gibt kein Licht Nummer {}, das Führung sein könnte.",
  ],
  // Flash and ambient.
  [
    "How much the flash gives is missing: read it in lux·s, without the ambient.",
    "Es fehlt, wie viel der Blitz gibt: miss ihn in lx·s, ohne das Umgebungslicht.",
  ],
  [
    "How much the ambient gives is missing: read it in lux, without the flash.",
    "Es fehlt, wie viel das Umgebungslicht gibt: miss es in Lux, ohne den Blitz.",
  ],
  [
    "The shutter is missing: give time_s, such as 1/60, or shutter_deg with fps.",
    "Der Verschluss fehlt: gib eine Zeit an, etwa 1/60, oder einen Winkel mit Bildrate.",
  ],
  [
    "At so short a time the shutter may cut the burst or not sync with it: check the sync speed and read the flash at this setting.",
    "Bei so kurzer Zeit kann der Verschluss den Blitz abschneiden oder nicht synchron sein: prüfe die Synchronzeit, und miss den Blitz bei dieser Einstellung.",
  ],
  // Flicker.
  [
    "A shutter of {} is longer than a frame at {} frames a second.",
    "Ein Verschluss von {} ist länger als ein Bild bei {} Bildern in der Sekunde.",
  ],
  [
    "Which light? Give mains_hz (50 or 60), light_hz (a PWM frequency) or two measured shutter results.",
    "Welches Licht? Gib die Netzfrequenz an (50 oder 60), eine Pulsfrequenz oder zwei gemessene Verschlüsse.",
  ],
  [
    "Mains of {} Hz is unusual: 50 and 60 Hz are what public grids run at.",
    "Ein Netz mit {} Hz ist ungewöhnlich: öffentliche Netze laufen mit 50 oder 60 Hz.",
  ],
  [
    "light_hz counts pulses of light: a lamp on {} Hz mains pulses {} times a second. If you mean the mains, give mains_hz {}.",
    "Gezählt werden Lichtpulse: eine Lampe an {} Hz Netz pulst {}-mal in der Sekunde. Ist das Netz gemeint, gib dort {} an.",
  ],
  ["A shutter angle needs the frame rate, fps.", "Ein Verschlusswinkel braucht die Bildrate."],
  [
    "Each result needs its time_s or shutter_deg.",
    "Jedes Ergebnis braucht seine Zeit oder seinen Winkel.",
  ],
  ["flicker must be true (seen) or false (none seen).", "Sag, ob es flimmerte oder nicht."],
  [
    "An unknown light needs two different shutter times at which no flicker was seen.",
    "Ein unbekanntes Licht braucht zwei verschiedene Verschlusszeiten, bei denen nichts flimmerte.",
  ],
  [
    "No one frequency explains these results. Check them, and measure at shorter shutters: the two shortest without flicker tell most.",
    "Keine einzelne Frequenz erklärt diese Ergebnisse. Prüfe sie, und miss bei kürzeren Verschlüssen: die zwei kürzesten ohne Flimmern sagen am meisten.",
  ],
  [
    "{} Hz is the lowest frequency that fits. The light may pulse at a whole multiple of it: the shutters below are safe for those as well.",
    "{} Hz ist die niedrigste Frequenz, die passt. Das Licht kann mit einem ganzen Vielfachen pulsen: die Verschlüsse unten sind auch dafür sicher.",
  ],
  [
    "The shutters hold many pulses, so the frequency is loose: measure again with shorter ones.",
    "Die Verschlüsse fassen viele Pulse, die Frequenz ist also ungenau: miss noch einmal mit kürzeren.",
  ],
  [
    "no shutter holds a whole pulse at {} frames a second",
    "kein Verschluss fasst einen ganzen Puls bei {} Bildern in der Sekunde",
  ],
  ["take {}, or run {}", "nimm {}, oder drehe mit {}"],
  ["take {}", "nimm {}"],
  [
    "Any shutter is steady at {} frames a second",
    "Jeder Verschluss ist ruhig bei {} Bildern in der Sekunde",
  ],
  ["Steady: the shutter holds {} pulse{}", "Ruhig: ganze Pulse im Verschluss: {0}"],
  [
    "Steady from frame to frame: each frame starts at the same point of a pulse",
    "Ruhig von Bild zu Bild: jedes beginnt an derselben Stelle eines Pulses",
  ],
  ["to black", "bis Schwarz"],
  ["Flickers by up to {} % ({}): {}", "Flimmert um bis zu {} % ({}): {}"],
  [
    "{} is on {} Hz mains and the shoot runs {} frames a second: at {} lamps on the mains pulse in the picture; {}.",
    "{} hängt an {} Hz Netz, und gedreht wird mit {} Bildern in der Sekunde: bei {} pulsen Lampen am Netz im Bild; {}.",
  ],
  ["This place", "Dieser Ort"],
  [
    "Above {} frames a second every frame sees a part of one pulse, whatever the shutter: light this shot with lamps on direct current or a much faster drive.",
    "Über {} Bildern in der Sekunde sieht jedes Bild nur einen Teil eines Pulses, bei jedem Verschluss: beleuchte das mit Lampen an Gleichstrom oder viel schnellerer Ansteuerung.",
  ],
  [
    "A rolling shutter can still show a standing band: a shutter that holds whole pulses loses it.",
    "Ein Rolling Shutter kann noch ein stehendes Band zeigen: ein Verschluss, der ganze Pulse fasst, wird es los.",
  ],
  [
    "The pulse drifts through the picture once in {} s: a short test does not show it.",
    "Der Puls wandert einmal in {} s durch das Bild: ein kurzer Test zeigt es nicht.",
  ],
  [
    "The depth is for a light that falls to nothing between pulses; filaments and smoothed drives pulse less. Type the modulation where it is known.",
    "Die Tiefe gilt für ein Licht, das zwischen den Pulsen erlischt; Glühfäden und geglättete Ansteuerungen pulsen weniger. Tippe die Modulation, wo sie bekannt ist.",
  ],
  // Mixing and unmixing.
  ["no edge in colour to be seen", "keine Farbkante zu sehen"],
  ["an edge in colour that a careful eye finds", "eine Farbkante, die ein genaues Auge findet"],
  ["a clear edge in colour", "eine deutliche Farbkante"],
  ["a strong edge in colour", "eine starke Farbkante"],
  [
    "There are no lights to mix yet: give one or more.",
    "Noch gibt es keine Lichter zum Mischen: gib mindestens eines an.",
  ],
  [
    "{}: a dimmed tungsten lamp turns warmer than it was read; read it again at that setting.",
    "{}: eine gedimmte Glühlampe wird wärmer, als sie gemessen wurde; miss sie bei dieser Einstellung noch einmal.",
  ],
  // Of dimming a filament.
  [
    "This is an estimate until the light is read again at that setting.",
    "Das ist eine Schätzung, bis das Licht bei dieser Einstellung neu gemessen ist.",
  ],
  [
    "Ask one thing: a colour (to), a part of the light (percent_light), stops, or a part of the volts (percent_volts).",
    "Frage eines: eine Farbe (to), einen Teil des Lichts (percent_light), Blenden oder einen Teil der Spannung (percent_volts).",
  ],
  ["The colour in “to” is the target already.", "Die Farbe in „to“ ist schon das Ziel."],
  [
    "Only a filament turns warmer as it is dimmed: if this is tungsten, say so as its lamp.",
    "Nur ein Glühfaden wird beim Dimmen wärmer: ist das Glühlicht, dann gib es als Lampe an.",
  ],
  [
    "No filament gives this light: {} without the gels that are named, and tungsten melts at {} K. Name the gels that are on it, or take another kind of lamp.",
    "Kein Glühfaden gibt dieses Licht: {} ohne die genannten Folien, und Wolfram schmilzt bei {} K. Nenne die Folien davor, oder nimm eine andere Lampenart.",
  ],
  [
    "Give the setting of this reading in percent of light or of volts, one of them.",
    "Gib die Einstellung dieser Messung in Prozent des Lichts oder der Spannung an, eines davon.",
  ],
  [
    "At {} % the filament reads {} K, no warmer than at 100 %: check which reading is which.",
    "Bei {} % misst der Glühfaden {} K, nicht wärmer als bei 100 %: prüfe, welche Messung welche ist.",
  ],
  [
    "These readings contradict each other: less must always read warmer. Check which setting belongs to which reading.",
    "Diese Messungen widersprechen sich: weniger muss immer wärmer messen. Prüfe, welche Einstellung zu welcher Messung gehört.",
  ],
  [
    "A dimmer only takes light away: it cannot be brighter than it was read. If it was dimmed then, read it at full.",
    "Ein Dimmer nimmt nur Licht weg: heller als gemessen geht es nicht. War es dabei gedimmt, dann miss es voll.",
  ],
  [
    "Below 0.1 % of its light a filament only glows: that is as far as this goes.",
    "Unter 0,1 % des Lichts glimmt ein Glühfaden nur noch: weiter geht es hier nicht.",
  ],
  [
    "Dimming only makes it warmer: at full it reads {} K, and {} K is cooler.",
    "Dimmen macht es nur wärmer: voll misst es {} K, und {} K ist kühler.",
  ],
  [
    "Dimming brings it no closer: it only makes it warmer.",
    "Dimmen bringt es nicht näher: es macht nur wärmer.",
  ],
  [
    "Even at 0.1 % of its light it is still {} steps away.",
    "Auch bei 0,1 % des Lichts ist es noch {} Schritte weg.",
  ],
  [
    "Dimming leaves it {} steps away, too {}: that is for gel.",
    "Nach dem Dimmen ist es noch {} Schritte weg, zu {}: das ist Sache der Folie.",
  ],
  [
    "{} has no lux while others have: type its share, or leave lux out for all of them to count as equal.",
    "{} hat keine Lux, andere schon: tippe den Anteil, oder lass Lux bei allen weg, dann zählen sie gleich.",
  ],
  [
    "Every light is at zero: nothing is left to mix.",
    "Jedes Licht steht auf null: nichts bleibt zu mischen.",
  ],
  ["The share in lux", "Der Anteil in Lux"],
  ["The share in foot-candles", "Der Anteil in Footcandle"],
  ["The dimmer in percent", "Der Dimmer in Prozent"],
  [
    "The inverse square needs two distances: where the light was read (measured_at_m) and where it stands now (distance_m).",
    "Das Abstandsgesetz braucht zwei Abstände: wo das Licht gemessen wurde und wo es jetzt steht.",
  ],
  ["Give the reading of each light alone.", "Gib die Messung jedes Lichts allein an."],
  [
    "The sum has light that none of these give: it is {} against their closest mixture. Look for a source that pulls that way.",
    "Die Summe enthält Licht, das keines von diesen gibt: sie ist {} gegen ihre nächste Mischung. Suche eine Quelle, die in diese Richtung zieht.",
  ],
  [
    "{} lights cannot be told apart by x y and lux: three at most. Load their spectra, or switch some off and read again.",
    "{} Lichter lassen sich aus x y und Lux nicht trennen: höchstens drei. Lade ihre Spektren, oder schalte einige ab und miss noch einmal.",
  ],
  [
    "{} and {} are too much alike to tell their shares apart; together they give {}.",
    "{} und {} sind sich zu ähnlich, um ihre Anteile zu trennen; zusammen geben sie {}.",
  ],
  ["The readings tell these lights apart.", "Die Messungen trennen diese Lichter."],
  [
    "Take these shares as a rough guess: a small error of a reading moves them.",
    "Nimm diese Anteile als grobe Schätzung: ein kleiner Messfehler verschiebt sie.",
  ],
  // Files.
  [
    "A gel is read from a transmittance, nothing else.",
    "Eine Folie wird aus einer Transmission gelesen, aus nichts anderem.",
  ],
  [
    "{} is a light by its unit, not a transmittance. To learn a gel from two lights, load them as the bare and the gelled reading.",
    "{} ist der Einheit nach ein Licht, keine Transmission. Um eine Folie aus zwei Lichtern zu lernen, lade sie als Messung ohne und mit Folie.",
  ],
  [
    "The file did not arrive whole; choose it again.",
    "Die Datei kam nicht ganz an; wähle sie noch einmal.",
  ],
  ["not recognised", "nicht erkannt"],
  [
    "There is no spectrum to write; choose at least one.",
    "Es gibt kein Spektrum zu schreiben; wähle mindestens eines.",
  ],
  [
    "The wavelengths at {} nm are closer than a file can hold.",
    "Die Wellenlängen bei {} nm liegen dichter, als eine Datei es fasst.",
  ],
  [
    "The file has {} lines; at most {} are read.",
    "Die Datei hat {} Zeilen; höchstens {} werden gelesen.",
  ],
  [
    "The table is too large: at most {} fields and {} values are read.",
    "Die Tabelle ist zu groß: höchstens {} Felder und {} Werte werden gelesen.",
  ],
  [
    "The data has no END_DATA; the file may have been cut short.",
    "Den Daten fehlt END_DATA; die Datei ist vielleicht abgeschnitten.",
  ],
  [
    "BEGIN_DATA comes without fields in BEGIN_DATA_FORMAT.",
    "BEGIN_DATA kommt ohne Felder in BEGIN_DATA_FORMAT.",
  ],
  [
    "Expected {} values, one for each field, but found {}; the line is left out.",
    "Erwartet sind {} Werte, einer für jedes Feld, gefunden {}; die Zeile bleibt weg.",
  ],
  [
    "The CGATS file has no spectral fields, such as SPECTRAL_380, and no XYY_X.",
    "Die CGATS-Datei hat keine Spektralfelder wie SPECTRAL_380 und kein XYY_X.",
  ],
  ["The wavelength", "Die Wellenlänge"],
  ["The value at {} nm", "Der Wert bei {} nm"],
  ["It is left out.", "Er bleibt weg."],
  [
    "The file does not say what was measured. What is it?",
    "Die Datei sagt nicht, was gemessen wurde. Was ist es?",
  ],
  [
    "There are more faults like these; only the first are listed.",
    "Es gibt mehr solche Fehler; nur die ersten stehen hier.",
  ],
  [
    "At most {} readings are read from one file.",
    "Aus einer Datei werden höchstens {} Messungen gelesen.",
  ],
  [
    "x {}, y {} is no colour that a light can have.",
    "x {}, y {} ist keine Farbe, die ein Licht haben kann.",
  ],
  ["{} K is no colour temperature of a light.", "{} K ist keine Farbtemperatur eines Lichts."],
  [
    "At most {} spectra are read from one file.",
    "Aus einer Datei werden höchstens {} Spektren gelesen.",
  ],
  [
    "{} of its {} samples are damaged, too many to do without.",
    "{} seiner {} Werte sind beschädigt, zu viele, um ohne sie auszukommen.",
  ],
  ["{} nm is no wavelength of light.", "{} nm ist keine Wellenlänge von Licht."],
  ["The wavelengths fell; they are turned round.", "Die Wellenlängen fielen; sie sind umgedreht."],
  [
    "The wavelengths were out of order; they are sorted.",
    "Die Wellenlängen standen durcheinander; sie sind sortiert.",
  ],
  [
    "The transmittance at {} nm is {}; a gel cannot add light. Are the values in percent?",
    "Die Transmission bei {} nm ist {}; eine Folie kann kein Licht dazugeben. Sind die Werte in Prozent?",
  ],
  [
    "The {} of {} reaches {}. Are its values factors (at most 1) or percent?",
    "{1}: die {0} reicht bis {2}. Sind die Werte Faktoren (höchstens 1) oder Prozent?",
  ],
  [
    "The CxF file holds no spectrum and no emissive chromaticity.",
    "Die CxF-Datei enthält kein Spektrum und keine Farbe eines Lichts.",
  ],
  [
    "The {} does not say at which wavelength it begins; expected is a StartWL.",
    "{} sagt nicht, bei welcher Wellenlänge es beginnt; erwartet ist StartWL.",
  ],
  [
    "The file does not say how many nm its {} samples are apart.",
    "Die Datei sagt nicht, wie viele nm ihre {} Werte auseinander liegen.",
  ],
  ["X, Y and Z add up to nothing.", "X, Y und Z ergeben zusammen nichts."],
  ["Expected a number for {} but found “{}”.", "Erwartet ist eine Zahl für {}, gefunden „{}“."],
  [
    "The line has neither x and y nor a colour temperature.",
    "Die Zeile hat weder x und y noch eine Farbtemperatur.",
  ],
  [
    "This XML is a “{}” document; read are IES TM-27 and CxF3 (ISO 17972).",
    "Dieses XML ist ein „{}“-Dokument; gelesen werden IES TM-27 und CxF3 (ISO 17972).",
  ],
  [
    "The XML declares a document type or entities, which are not read for safety.",
    "Das XML erklärt einen Dokumenttyp oder Entitäten; die werden der Sicherheit halber nicht gelesen.",
  ],
  ["The XML is nested deeper than {} levels.", "Das XML ist tiefer als {} Ebenen verschachtelt."],
  ["The XML has more than {} elements.", "Das XML hat mehr als {} Elemente."],
  [
    "The XML is broken: {}. It may have been cut short; save or send it again.",
    "Das XML ist beschädigt: {}. Vielleicht ist es abgeschnitten; speichere oder sende es noch einmal.",
  ],
  [
    "The file does not contain the delimiter or decimal chosen.",
    "Die Datei enthält das gewählte Trennzeichen oder Dezimalzeichen nicht.",
  ],
  [
    "No spectrum was found. Expected is a column or a row of wavelengths, such as 380, 385 … 780 nm ({} or more), with a value for each.",
    "Kein Spektrum gefunden. Erwartet ist eine Spalte oder Zeile mit Wellenlängen, etwa 380, 385 … 780 nm ({} oder mehr), mit je einem Wert.",
  ],
  [
    "The line has {} columns; at most {} are read.",
    "Die Zeile hat {} Spalten; höchstens {} werden gelesen.",
  ],
  [
    "At most {} values are read from one file.",
    "Aus einer Datei werden höchstens {} Werte gelesen.",
  ],
  [
    "The numbers can be read in two ways. What is the decimal mark?",
    "Die Zahlen lassen sich auf zwei Arten lesen. Was ist das Dezimalzeichen?",
  ],
  [
    "The table can be read in two ways: {} spectra with wavelengths down a column or {} with wavelengths across a row.",
    "Die Tabelle lässt sich auf zwei Arten lesen: {} Spektren mit Wellenlängen in einer Spalte oder {} mit Wellenlängen in einer Zeile.",
  ],
  [
    "The spectrum is given over wavenumber (1/cm); export it over wavelength in nm.",
    "Das Spektrum steht über der Wellenzahl (1/cm); gib es über der Wellenlänge in nm aus.",
  ],
  [
    "Expected a number at {} nm but found “{}”; the sample is left out.",
    "Bei {} nm ist eine Zahl erwartet, gefunden „{}“; der Wert bleibt weg.",
  ],
  [
    "Column {} has numbers in only {} of {} lines; it is left out.",
    "Spalte {} hat nur in {} von {} Zeilen Zahlen; sie bleibt weg.",
  ],
  [
    "The wavelength {} does not fit between its neighbours; the line is left out.",
    "Die Wellenlänge {} passt nicht zwischen ihre Nachbarn; die Zeile bleibt weg.",
  ],
  [
    "Expected a wavelength but found “{}”; the line is left out.",
    "Erwartet ist eine Wellenlänge, gefunden „{}“; die Zeile bleibt weg.",
  ],
  [
    "a zip archive or a spreadsheet workbook; save the sheet as CSV",
    "ein Zip-Archiv oder eine Tabellenmappe; speichere das Blatt als CSV",
  ],
  [
    "an old spreadsheet workbook; save the sheet as CSV",
    "eine alte Tabellenmappe; speichere das Blatt als CSV",
  ],
  ["a PDF; save the numbers as CSV or text", "ein PDF; speichere die Zahlen als CSV oder Text"],
  [
    "a picture; save the numbers as CSV or text",
    "ein Bild; speichere die Zahlen als CSV oder Text",
  ],
  ["compressed; unpack it first", "komprimiert; entpacke sie zuerst"],
  [
    "a formatted document; save it as plain text",
    "ein formatiertes Dokument; speichere es als reinen Text",
  ],
  [
    "The file has {} MB; at most {} MB are read.",
    "Die Datei hat {} MB; höchstens {} MB werden gelesen.",
  ],
  ["This is not a text file but {}.", "Das ist keine Textdatei, sondern {}."],
  ["The file is empty.", "Die Datei ist leer."],
  [
    "This is not a text file; save the spectra as text, CSV or TM-27.",
    "Das ist keine Textdatei; speichere die Spektren als Text, CSV oder TM-27.",
  ],
  [
    "The TM-27 file has no SpectralDistribution, so no spectrum in it.",
    "Die TM-27-Datei hat keine SpectralDistribution, also kein Spektrum.",
  ],
  [
    "Absorptance is not a light, gel or surface.",
    "Eine Absorption ist weder Licht noch Folie noch Oberfläche.",
  ],
  [
    "The file calls its quantity “{}”. What was measured?",
    "Die Datei nennt ihre Größe „{}“. Was wurde gemessen?",
  ],
  // Gels.
  [
    "“{}” has {} wavelengths and {} transmittances; it needs two or more, one for each wavelength.",
    "„{}“ hat {} Wellenlängen und {} Transmissionen; es braucht mindestens zwei, eine für jede Wellenlänge.",
  ],
  ["The wavelengths of “{}” must rise.", "Die Wellenlängen von „{}“ müssen steigen."],
  [
    "“{}” covers {}–{} nm; a gel needs at least 420–680 nm.",
    "„{}“ reicht von {} bis {} nm; eine Folie braucht mindestens 420–680 nm.",
  ],
  [
    "The transmittances of “{}” must lie between 0 and 1 (percent divided by 100).",
    "Die Transmissionen von „{}“ müssen zwischen 0 und 1 liegen (Prozent durch 100).",
  ],
  [
    "The two spectra are not on one scale, so the stops lost are reckoned from a film that is clear where it passes most. Give the lux of both to know them.",
    "Die zwei Spektren haben nicht denselben Maßstab; die verlorenen Blenden gelten darum für einen Film, der dort klar ist, wo er am meisten durchlässt. Gib die Lux beider an, um sie zu wissen.",
  ],
  [
    "With the gel there is {} times the light at {} nm; a gel cannot add light. Are the two readings swapped, or was the lamp or the meter moved?",
    "Mit der Folie ist bei {1} nm {0}-mal so viel Licht; eine Folie kann keines dazugeben. Sind die Messungen vertauscht, oder wurde Lampe oder Messgerät bewegt?",
  ],
  [
    "With the gel there is {} times the light of the bare lamp. Are the two readings swapped, or was the lamp or the meter moved?",
    "Mit der Folie ist {}-mal so viel Licht wie ohne. Sind die Messungen vertauscht, oder wurde Lampe oder Messgerät bewegt?",
  ],
  [
    "The bare lamp gives enough light at only {} of 420–680 nm to tell what the gel does. Measure it on a lamp with an even spectrum, such as tungsten or daylight.",
    "Die blanke Lampe gibt nur auf {} von 420–680 nm genug Licht, um zu sagen, was die Folie tut. Miss sie an einer Lampe mit gleichmäßigem Spektrum, etwa Glühlampe oder Tageslicht.",
  ],
  [
    "Where the lamp gives little light the gel is a guess: trust it on lamps like this one, and measure it on tungsten or daylight for others.",
    "Wo die Lampe wenig Licht gibt, ist die Folie geschätzt: traue ihr an Lampen wie dieser, und miss sie für andere an Glühlampe oder Tageslicht.",
  ],
  [
    "Learned from a shift, not a spectrum: trust it on lamps like this one.",
    "Aus einer Verschiebung gelernt, nicht aus einem Spektrum: traue ihr an Lampen wie dieser.",
  ],
  [
    "Without the lux of both readings the stops lost are reckoned from a film that is clear where it passes most.",
    "Ohne die Lux beider Messungen gelten die verlorenen Blenden für einen Film, der dort klar ist, wo er am meisten durchlässt.",
  ],
  [
    "No gel of this colour passes as much light as the two readings say; the most it could pass is taken. Was the lamp or the meter moved?",
    "Keine Folie dieser Farbe lässt so viel Licht durch, wie die Messungen sagen; das Meiste, was möglich ist, gilt. Wurde Lampe oder Messgerät bewegt?",
  ],
  [
    "No gel turns the bare light into the gelled one. Check both readings, and the kind of lamp.",
    "Keine Folie macht aus dem einen Licht das andere. Prüfe beide Messungen und die Art der Lampe.",
  ],
  [
    "{}: the transmittance at {} nm is {}; a gel cannot add light. Are the values in percent?",
    "{}: die Transmission bei {} nm ist {}; eine Folie kann kein Licht dazugeben. Sind die Werte in Prozent?",
  ],
  ["{}: it passes no light.", "{}: sie lässt kein Licht durch."],
  [
    "Give two readings or a shift, not both.",
    "Gib zwei Messungen oder eine Verschiebung an, nicht beides.",
  ],
  [
    "{} mired takes a light of {} K beyond any white.",
    "{} mired führen ein Licht von {} K über jedes Weiß hinaus.",
  ],
  // The order, windows.
  [
    "rolls are sizes to buy: leave the count out.",
    "Rollen sind hier Größen zum Kaufen: lass die Anzahl weg.",
  ],
  [
    "The roll is too narrow beside the overlap at a seam.",
    "Die Rolle ist zu schmal neben der Überlappung an einer Naht.",
  ],
  ["Order {}", "Bestellen: {}"],
  ["Nothing to order: the stock suffices", "Nichts zu bestellen: der Bestand reicht"],
  ["No size is known yet", "Noch ist keine Größe bekannt"],
  ["Nothing hangs yet", "Noch hängt nichts"],
  [
    "No size yet for some {}: it is not in the order.",
    "Für {} fehlt zum Teil die Größe: das steht nicht in der Bestellung.",
  ],
  ["Which gel hangs here? Give its name.", "Welche Folie hängt hier? Nenne ihren Namen."],
  [
    "That is more gel than one order can hold; divide it.",
    "Das ist mehr Folie, als eine Bestellung fasst; teile sie auf.",
  ],
  ["enough in stock", "genug im Bestand"],
  ["no size yet", "noch keine Größe"],
  [
    "Reach and height: work from a platform or tower that is made for it, never lean from a ladder or out of a window; local codes and licensed practice decide.",
    "Höhe: arbeite von einem dafür gebauten Podest oder Gerüst, lehne dich nie von einer Leiter oder aus dem Fenster; örtliche Vorschriften und Befugte entscheiden.",
  ],
  [
    "Wind: gel and frames outside are sails. Tie them off on every side, watch the forecast, and take them down in time.",
    "Wind: Folie und Rahmen draußen sind Segel. Sichere sie an jeder Seite, achte auf die Vorhersage, und nimm sie rechtzeitig ab.",
  ],
  [
    "Never on glass that traps heat (insulating, laminated, wired, coated or leaded) without asking the building: gel in the sun heats the pane and can crack it.",
    "Nie auf Glas, das Hitze staut (Isolier-, Verbund-, Draht-, beschichtetes oder Bleiglas), ohne das Haus zu fragen: Folie in der Sonne erhitzt die Scheibe und kann sie sprengen.",
  ],
  ["Keep exits, vents and alarms free.", "Ausgänge, Lüftungen und Melder frei halten."],
  [
    "That makes more than {} panes; ask for fewer windows at a time.",
    "Das sind mehr als {} Scheiben; frage nach weniger Fenstern auf einmal.",
  ],
  [
    "No windows yet: give width_m, height_m and count of each kind.",
    "Noch keine Fenster: gib Breite, Höhe und Anzahl jeder Art an.",
  ],
  [
    "There is no roll to cut from: every count is 0.",
    "Es gibt keine Rolle zum Schneiden: jede Anzahl ist 0.",
  ],
  [
    "The roll is too small for this much glass beside the overlap: take a wider roll or less overlap, or divide the windows.",
    "Die Rolle ist neben der Überlappung zu klein für so viel Glas: nimm eine breitere Rolle oder weniger Überlappung, oder teile die Fenster auf.",
  ],
  ["{} of that width by area alone, {}", "{} dieser Breite allein nach der Fläche, {}"],
  ["The rolls do not suffice: {} left over.", "Die Rollen reichen nicht: {} bleiben übrig."],
  [
    "Hide seams behind a glazing bar where there is one, and tape them flat.",
    "Lege Nähte hinter eine Sprosse, wo es eine gibt, und klebe sie flach.",
  ],
  [
    "Another direction of the gel may need fewer seams.",
    "In anderer Richtung braucht die Folie vielleicht weniger Nähte.",
  ],
  [
    "Give stops, or what is measured and wanted.",
    "Gib Blenden an, oder was gemessen und gewünscht ist.",
  ],
  ["{} is missing: the light at the window.", "{} fehlt: das Licht am Fenster."],
  // The sun.
  [
    "Never look at the sun, and never through a lens, a finder or a spot meter: it blinds. Keep lenses and sensors off it too.",
    "Nie in die Sonne sehen, und nie durch Objektiv, Sucher oder Spotmeter: sie macht blind. Halte auch Objektive und Sensoren von ihr fern.",
  ],
  ["The sun does not set on this day.", "Die Sonne geht an diesem Tag nicht unter."],
  ["The sun does not rise on this day.", "Die Sonne geht an diesem Tag nicht auf."],
  [
    "“{}” is not a date here. Type year-month-day, such as 2026-11-25.",
    "„{}“ ist hier kein Datum. Tippe Jahr-Monat-Tag, etwa 2026-11-25.",
  ],
  [
    "The sun is computed from 1950 to 2100 only.",
    "Die Sonne wird nur von 1950 bis 2100 berechnet.",
  ],
  ["all day", "den ganzen Tag"],
  ["until {}", "bis {}"],
  ["from {}", "ab {}"],
  [
    "An even cloud cover is taken as CIE D65, average daylight, all day.",
    "Eine gleichmäßige Wolkendecke gilt als CIE D65, mittleres Tageslicht, den ganzen Tag.",
  ],
  [
    "A {} sky after Bird and Riordan (1986): air, haze and ozone colour a sun of 5900 K.",
    "{} Himmel nach Bird und Riordan (1986): Luft, Dunst und Ozon färben eine Sonne von 5900 K.",
  ],
  [
    "Sun: facing it; shade: sky alone; open: both on level ground.",
    "Sonne: ihr zugewandt; Schatten: Himmel allein; offen: beides auf ebenem Boden.",
  ],
  [
    "None while the sun is low (sun under {}°, sky under {}°).",
    "Keine, solange die Sonne tief steht (Sonne unter {}°, Himmel unter {}°).",
  ],
  ["Estimate, not a reading.", "Schätzung, keine Messung."],
  ["Cloud and walls change it.", "Wolken und Wände ändern sie."],
  ["It stands {}° high at most.", "Sie steht höchstens {}° hoch."],
  ["No sun in {}: {}", "Keine Sonne im {}: {}"],
  ["No direct sun in {} on this day.", "An diesem Tag keine direkte Sonne im {}."],
  ["the window facing {}", "Fenster nach {}"],
  [
    "Local time of UTC{} is far from what longitude {}° suggests (about {}): check the sign of both.",
    "Ortszeit UTC{} liegt weit von dem, was {}° Länge erwarten lässt (etwa {}): prüfe beide Vorzeichen.",
  ],
  // Colour rendering.
  [
    "Colour rendering needs a spectrum: x y or a CCT alone cannot tell how a light shows colours. Load the spectrum file that the meter saved, or paste it.",
    "Farbwiedergabe braucht ein Spektrum: x y oder eine CCT allein sagt nicht, wie ein Licht Farben zeigt. Lade die Datei, die das Messgerät gespeichert hat, oder setze sie ein.",
  ],
  [
    "The samples are {} nm apart; the published metrics ask for 5 nm or finer. They were interpolated: take the numbers as approximate.",
    "Die Werte liegen {} nm auseinander; die Normen verlangen 5 nm oder feiner. Sie sind interpoliert: nimm die Zahlen als ungefähr.",
  ],
  [
    "A coloured light, not a white one: colour rendering says little about it",
    "Ein farbiges Licht, kein weißes: Farbwiedergabe sagt wenig darüber",
  ],
  ["The eye will see {} ({}).", "Das Auge wird {} sehen ({})."],
  [
    "The spectrum is unlike its reference ({}): cameras and film stocks may disagree about it.",
    "Das Spektrum gleicht seiner Referenz nicht ({}): Kameras und Filme können sich darüber uneins sein.",
  ],
  [
    "Nothing stands out: colours stay as they are.",
    "Nichts fällt auf: Farben bleiben, wie sie sind.",
  ],
  ["Deep reds go dull: skin will look flat", "Tiefes Rot wird stumpf: Haut wirkt flach"],
  [
    "Deep reds lose strength: watch lips and skin",
    "Tiefes Rot verliert Kraft: achte auf Lippen und Haut",
  ],
  ["{} shifts in colour (R{} {}).", "{} verschiebt sich in der Farbe (R{} {})."],
  ["Colours that come out wrong: {}.", "Farben, die falsch kommen: {}."],
  [
    "The light is too far from its reference white for CRI to be trusted: take Ra and R1–R15 as doubtful.",
    "Das Licht ist zu weit von seinem Referenzweiß, um CRI zu trauen: nimm Ra und R1–R15 als zweifelhaft.",
  ],
  [
    "Reds lose a lot of chroma: faces go pale and grey",
    "Rot verliert viel Buntheit: Gesichter werden blass und grau",
  ],
  [
    "Reds lose some chroma: faces a little pale",
    "Rot verliert etwas Buntheit: Gesichter ein wenig blass",
  ],
  ["Reds are pushed: faces go ruddy", "Rot ist überhöht: Gesichter werden rötlich"],
  ["Colours go pale overall (Rg {}).", "Farben werden insgesamt blass (Rg {})."],
  ["Colours come out too vivid (Rg {}).", "Farben kommen zu kräftig (Rg {})."],
  [
    "Fine for a camera balanced to it (TLCI {}), but the eye will see {}, and so will a camera balanced elsewhere.",
    "Gut für eine darauf abgeglichene Kamera (TLCI {}), aber das Auge wird {} sehen, und eine anders abgeglichene Kamera auch.",
  ],
  [
    "Fine for camera: no correction needed ({}).",
    "Gut für die Kamera: keine Korrektur nötig ({}).",
  ],
  [
    "Hard to grade back ({}): worst are {}.",
    "Im Grading schwer zurückzuholen ({}): am schlimmsten sind {}.",
  ],
  ["Needs a grade ({}): worst are {}.", "Braucht Grading ({}): am schlimmsten sind {}."],
  [
    "Fine for the eye (Ra {}), but the camera will see it differently.",
    "Gut für das Auge (Ra {}), aber die Kamera sieht es anders.",
  ],
  [
    "Left out of TLCI, since the standard camera cannot hold them: {}.",
    "Aus TLCI ausgelassen, weil die Normkamera sie nicht fasst: {}.",
  ],
  [
    "The spectra are alike: they mix unseen.",
    "Die Spektren gleichen sich: sie mischen sich ungesehen.",
  ],
  [
    "The spectra are unlike: a match by x y will not hold for every camera.",
    "Die Spektren gleichen sich nicht: ein Abgleich nach x y hält nicht für jede Kamera.",
  ],
  ["Nothing stands out: they show colours alike.", "Nichts fällt auf: sie zeigen Farben gleich."],
  [
    "A metameric pair: the lights agree in x y, but colours do not. The eye sees {} differ most.",
    "Ein metameres Paar: die Lichter stimmen in x y überein, die Farben nicht. Am meisten sieht das Auge den Unterschied bei {}.",
  ],
  ["Skin will look plainly different.", "Haut sieht deutlich anders aus."],
  ["Skin will look a little different side by side.", "Haut sieht nebeneinander etwas anders aus."],
  ["The eye sees them alike, a camera does not.", "Das Auge sieht sie gleich, eine Kamera nicht."],
  [
    "On one camera balance the second light goes {}, though the eye sees nearly the same white.",
    "Bei einem Abgleich der Kamera wird das zweite Licht {}, obwohl das Auge fast dasselbe Weiß sieht.",
  ],
  [
    "No score: the standard camera cannot be balanced for so pure a colour.",
    "Kein Wert: auf eine so reine Farbe lässt sich die Normkamera nicht abgleichen.",
  ],
  [
    "Not judged: the standard camera sees nothing of so pure a colour.",
    "Nicht beurteilt: von einer so reinen Farbe sieht die Normkamera nichts.",
  ],
  [
    "Not compared: one of the lights is too pure a colour to adapt to.",
    "Nicht verglichen: eines der Lichter ist zu rein, um sich daran anzupassen.",
  ],
  [
    "Not rated: the light is too far from white (Duv {}) to have a reference light to be judged against.",
    "Nicht bewertet: das Licht ist zu weit von Weiß (Duv {}), um ein Referenzlicht zu haben.",
  ],
  [
    "Not rated: reference lights reach from 1000 to {} K, and this light lies outside.",
    "Nicht bewertet: Referenzlichter reichen von 1000 bis {} K, und dieses Licht liegt außerhalb.",
  ],
  [
    "Not rated: there is no light between 375 and 675 nm to compare.",
    "Nicht bewertet: zwischen 375 und 675 nm gibt es kein Licht zu vergleichen.",
  ],
  [
    "No score: there is no light between 380 and 760 nm.",
    "Kein Wert: zwischen 380 und 760 nm gibt es kein Licht.",
  ],
  [
    "No score: no patch of the chart stays within what the standard camera can hold.",
    "Kein Wert: kein Feld der Tafel bleibt in dem, was die Normkamera fasst.",
  ],
  ["black body {} K", "schwarzer Strahler {} K"],
  ["CIE daylight {} K", "CIE-Tageslicht {} K"],
  ["daylight {} K", "Tageslicht {} K"],
  ["{} black body {} K and {} daylight {} K", "{} schwarzer Strahler {} K und {} Tageslicht {} K"],
  [
    "{} black body and {} CIE daylight at {} K",
    "{} schwarzer Strahler und {} CIE-Tageslicht bei {} K",
  ],
  ["Did you mean {} K?", "Waren {} K gemeint?"],
  ["dial {}x {} y {}", "einstellen auf {}x {} y {}"],
  [
    "It ends too early: it was cut on the way",
    "Es endet zu früh: es wurde unterwegs abgeschnitten",
  ],
  ["It is not JSON: {}", "Es ist kein JSON: {}"],
  [
    "The sum has {}light that none of these give: x {}, y {}{}.",
    "Die Summe enthält {}Licht, das keines von diesen gibt: x {}, y {}{}.",
  ],
  ["{} wavelengths were repeated.", "{} Wellenlängen kamen mehrfach vor."],
  [
    "{}{} wavelengths, such as {} nm, have several values. Which holds?",
    "{}{} Wellenlängen, etwa {} nm, haben mehrere Werte. Welcher gilt?",
  ],
  ["The wavelengths run from {}; the file {}.", "Die Wellenlängen laufen von {}; die Datei {}."],
  ["calls them {}", "nennt sie {}"],
  ["does not say in which unit", "nennt keine Einheit"],
];

/** What stands where a sentence has a place for it. */
export const WORDS = new Map([
  ["the spectrum", "das Spektrum"],
  ["the target", "das Ziel"],
  ["text", "Text"],
  ["a number", "eine Zahl"],
  ["a whole number", "eine ganze Zahl"],
  ["a list", "eine Liste"],
  ["a group of fields", "eine Gruppe von Feldern"],
  ["nothing", "nichts"],
  ["true or false", "wahr oder falsch"],
  ["of the right form", "in der richtigen Form"],
  ["green", "grün"],
  ["magenta", "magenta"],
  ["warm", "warm"],
  ["cool", "kühl"],
  ["the sun does not rise on this day.", "die Sonne geht an diesem Tag nicht auf."],
  ["clear", "Klarer"],
  ["hazy", "Dunstiger"],
  ["transmittance", "Transmission"],
  ["reflectance", "Reflexion"],
  ["holds", "passt"],
  ["near", "nahe"],
  ["out", "daneben"],
  ["Light skin", "Helle Haut"],
  ["Asian skin", "Asiatische Haut"],
  ["black body", "schwarzer Strahler"],
  ["dark skin", "dunkle Haut"],
  ["light skin", "helle Haut"],
  ["blue sky", "Himmelblau"],
  ["foliage", "Laub"],
  ["blue flower", "blaue Blüte"],
  ["bluish green", "Blaugrün"],
  ["orange", "Orange"],
  ["purplish blue", "Purpurblau"],
  ["moderate red", "mittleres Rot"],
  ["purple", "Purpur"],
  ["yellow green", "Gelbgrün"],
  ["orange yellow", "Orangegelb"],
  ["blue", "Blau"],
  ["red", "Rot"],
  ["yellow", "Gelb"],
  ["cyan", "Cyan"],
  ["strong red", "kräftiges Rot"],
  ["strong yellow", "kräftiges Gelb"],
  ["strong green", "kräftiges Grün"],
  ["strong blue", "kräftiges Blau"],
  ["leaf green", "Laubgrün"],
  ["north", "Norden"],
  ["north-east", "Nordosten"],
  ["east", "Osten"],
  ["south-east", "Südosten"],
  ["south", "Süden"],
  ["south-west", "Südwesten"],
  ["west", "Westen"],
  ["north-west", "Nordwesten"],
]);

/**
 * What the kernel puts together from pieces: how such a text is known, and what is said instead of
 * each piece, one after the other.
 *
 * @type {{known: RegExp, pieces: [RegExp, string][]}[]}
 */
export const COMPOSED = [
  {
    // An offset or a drift, such as "34 mired too cool, a hair green".
    known:
      /^(\d+ mired (too (warm|cool)|warmer|cooler)|as warm as the target|no CCT to compare|same (colour|amount)|[\d.]+ stops? (brighter|darker)|(a hair|a touch|clearly|strongly) (green|magenta))/,
    pieces: [
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
      [/\b1\.0 stop brighter\b/g, "1.0 Blende heller"],
      [/\b1\.0 stop darker\b/g, "1.0 Blende dunkler"],
      [/\bstops? brighter\b/g, "Blenden heller"],
      [/\bstops? darker\b/g, "Blenden dunkler"],
      [/\bgreen\b/g, "grün"],
    ],
  },
  {
    // What a set needs: "3 of 4 out: 2 gels on 2 of them, 1 still not within tolerance."
    known: /^\d+ of \d+ out\b/,
    pieces: [
      [/^(\d+) of (\d+) out/, "$1 von $2 daneben"],
      [/: no gel helps them/, ": keine Folie hilft"],
      [/: 1 gels on (\d+) of them/, ": 1 Folie an $1 davon"],
      [/: (\d+) gels on (\d+) of them/, ": $1 Folien an $2 davon"],
      [/, (\d+) still not within tolerance/, ", $1 noch nicht in der Toleranz"],
    ],
  },
  {
    // A plan for a set: "3900 K: gel 3 lights, dial 1, 1.6 stops in all; fill not matched."
    known: /^\d+ K: (gel \d|no gel|take gel off|dial \d)/,
    pieces: [
      [/: gel 1 light\b/, ": 1 Licht mit Folie"],
      [/: gel (\d+) lights\b/, ": $1 Lichter mit Folie"],
      [/: no gel\b/, ": keine Folie"],
      [/\btake gel off (\d+)/, "Folie ab bei $1"],
      [/, dial (\d+)/, ", $1 einstellen"],
      [/, wins ([\d.]+) stops/, ", gewinnt $1 Blenden"],
      [/, ([\d.]+) stops in all/, ", $1 Blenden insgesamt"],
      [/; every light holds\.$/, "; jedes Licht passt."],
      [/ and (\d+) more not matched\.$/, " und $1 weitere nicht abgeglichen."],
      [/ not matched\.$/, " nicht abgeglichen."],
    ],
  },
  {
    known: /^take off .+, hang /,
    pieces: [[/^take off (.+), hang (.+)$/, "$1 abnehmen, $2 davor"]],
  },
  {
    // Stops, alone or as a ratio or a distance has them.
    known:
      /^([\d.:]+, )?(no stop|[\d.]*[⅓⅔]? stops?)( (over|under))?$|^[\d.]+ m \([\d.]+ ft\) from the lamp|^f\/[\d.]+ and \d tenths?$/,
    pieces: [
      [/ and (\d) tenths?$/, " und $1 Zehntel"],
      [/ from the lamp/, " von der Lampe"],
      [/: no change/, ": unverändert"],
      [/\bno stop\b/, "keine Blende"],
      [/(^|[^\d⅓⅔])(1|1\.0|[⅓⅔]) stop\b/, "$1$2 Blende"],
      [/\bstops?\b/, "Blenden"],
      [/ over$/, " darüber"],
      [/ under$/, " darunter"],
      [/ (Blenden?) more/, " $1 mehr"],
      [/ (Blenden?) less/, " $1 weniger"],
      [/, reads /, ", gibt "],
    ],
  },
  {
    // Neutral density on a window: "ND 0.3 + ND 0.6, then ⅓ stop over".
    known: /^(No ND|ND [\d.]+( \+ ND [\d.]+)*), then /,
    pieces: [
      [/^No ND/, "Kein ND"],
      [/, then right$/, ", dann stimmt es"],
      [/, then ([⅓⅔]|1) stop over$/, ", dann $1 Blende darüber"],
      [/, then ([⅓⅔]|1) stop under$/, ", dann $1 Blende darunter"],
      [/, then (.+) stops? over$/, ", dann $1 Blenden darüber"],
      [/, then (.+) stops? under$/, ", dann $1 Blenden darunter"],
    ],
  },
  {
    // Gel by the roll: "2 rolls of 1.22 × 7.62 m, 2 layers; no seam; 12 % offcuts".
    known: /^(Nothing fits|\d+ rolls? of ).*offcuts$|^\d+ (roll|piece|seam)s?$|× .+ used$/,
    pieces: [
      [/^Nothing fits/, "Nichts passt"],
      [/\b1 roll( of)?\b/g, "1 Rolle"],
      [/\b(\d+) rolls( of)?\b/g, "$1 Rollen"],
      [/ and (?=\d+ Rolle)/g, " und "],
      [/ layers/, " Lagen"],
      [/\bno seam\b/, "keine Naht"],
      [/\b1 seam\b/, "1 Naht"],
      [/ seams\b/, " Nähte"],
      [/ offcuts$/, " Verschnitt"],
      [/ pieces?$/, " Stück"],
      [/ used$/, " gebraucht"],
    ],
  },
  {
    // Sizes and how many: "3 of 2.4 × 1.8 m and 1 of 1.2 × 0.9 m", "2 of 1 m × 2 m, 2 × 1 panes each".
    known: /\b\d+ of [^:;×]{1,24}×/,
    pieces: [
      [/^Order /, "Bestellen: "],
      [/\b(\d+) of (?=[^:;×]{1,24}×)/g, "$1 Stück "],
      [/ and (?=\d+ Stück)/g, " und "],
      [/ panes each/, " Scheiben"],
    ],
  },
  {
    // The sun's day: "Sunrise 07:49, sunset 16:05; 15° high at most."
    known: /^(Sunrise|Sunset) \d/,
    pieces: [
      [/\bsunrise on this day\b/i, "Aufgang an diesem Tag"],
      [/\bsunset on this day\b/i, "Untergang an diesem Tag"],
      [/\(no /, "(kein "],
      [/\bsunrise\b/gi, "Aufgang"],
      [/\bsunset\b/gi, "Untergang"],
      [/ and /g, " und "],
      [/; (\d+)° high at most/, "; höchstens $1° hoch"],
    ],
  },
  {
    known: /^Direct sun in the window facing |^\d\d:\d\d to \d\d:\d\d$|^[\d.]+ to [\d.]+( nm)?$/,
    pieces: [
      [/^Direct sun in the window facing ([a-z-]+)/, "Direkte Sonne im Fenster, das nach $1 geht:"],
      [/\bnorth-east\b/, "Nordosten"],
      [/\bnorth-west\b/, "Nordwesten"],
      [/\bsouth-east\b/, "Südosten"],
      [/\bsouth-west\b/, "Südwesten"],
      [/\bnorth\b/, "Norden"],
      [/\beast\b/, "Osten"],
      [/\bsouth\b/, "Süden"],
      [/\bwest\b/, "Westen"],
      [/\ball day\b/, "den ganzen Tag"],
      [/\buntil /g, "bis "],
      [/\bfrom /g, "ab "],
      [/ to /g, " bis "],
      [/ and /g, " und "],
    ],
  },
  {
    // What a shared book is about, where it is about several: "The Night Ferry · 2 locations".
    known: /(^| · )\d+ (productions|locations|setups)$/,
    pieces: [
      [/productions$/, "Produktionen"],
      [/locations$/, "Motive"],
      [/setups$/, "Einstellungen"],
    ],
  },
  {
    // Where in a book something is wrong.
    known: /^(Entry \d+[^:]*:?|The book lacks the field \w+|The field \w+)$/,
    pieces: [
      [/^The book lacks the field/, "Dem Buch fehlt das Feld"],
      [/^The field/, "Das Feld"],
      [/^Entry/, "Eintrag"],
      [/\(a production\)/, "(Produktion)"],
      [/\(a location\)/, "(Motiv)"],
      [/\(a setup\)/, "(Einstellung)"],
      [/\(a light\)/, "(Licht)"],
      [/\(a reading\)/, "(Messung)"],
      [/\(a gel\)/, "(Folie)"],
    ],
  },
  {
    // Where two mixtures meet.
    known: / edge in colour.*, and .+ between them$/,
    pieces: [
      [/^no edge in colour to be seen/, "keine Farbkante zu sehen"],
      [
        /^an edge in colour that a careful eye finds/,
        "eine Farbkante, die ein genaues Auge findet",
      ],
      [/^a clear edge in colour/, "eine deutliche Farbkante"],
      [/^a strong edge in colour/, "eine starke Farbkante"],
      [/, and 1\.0 stop between them$/, ", und 1.0 Blende dazwischen"],
      [/, and (.+) stops between them$/, ", und $1 Blenden dazwischen"],
    ],
  },
  {
    // Shares of lights that have no name.
    known: /^light \d+ \d+%/,
    pieces: [[/\blight (?=\d+ \d+%)/g, "Licht "]],
  },
  {
    known: /, about [\d.]+ K$|^[\d.]+ (lx|lx·s) of $/,
    pieces: [
      [/, about /, ", etwa "],
      [/ of $/, " "],
    ],
  },
  {
    known: /^(strong|leaf) [a-z]+ \(R\d+ /,
    pieces: [
      [/strong yellow/, "kräftiges Gelb"],
      [/strong green/, "kräftiges Grün"],
      [/strong red/, "kräftiges Rot"],
      [/strong blue/, "kräftiges Blau"],
      [/leaf green/, "Laubgrün"],
    ],
  },
];
