/**
 * What the kernel says, in German: each of its forms with the same named places. A test holds them
 * against the kernel's source. A form without words needs no German.
 *
 * @type {Record<string, string>}
 */
export default {
  // asks/agree.py
  "{out} of {all} out": "{out} von {all} daneben",
  "Every light is as found: there is nothing to judge.":
    "Jedes Licht ist wie vorgefunden: es gibt nichts zu beurteilen.",
  "{words} {n} as found.": "{words} {n} wie vorgefunden.",
  "{out}: {n} gel on {gelled} of them": "{out}: {n} Folie auf {gelled} davon",
  "{out}: {n} gels on {gelled} of them": "{out}: {n} Folien auf {gelled} davon",
  "{work}, {still} still not within tolerance.": "{work}, {still} noch nicht in der Toleranz.",
  "{words} Read {n} again when hung.": "{words} {n} nach dem Hängen noch einmal messen.",
  "No reading here can be used.": "Keine Messung hier ist brauchbar.",
  "Every light holds.": "Jedes Licht passt.",
  "{first} and {second} agree in x y but not in spectrum (SSI {shown}): colours under them may differ.":
    "{first} und {second} stimmen in x y überein, aber nicht im Spektrum (SSI {shown}): Farben können unter ihnen verschieden aussehen.",
  "There are no lights yet: keep a reading first.":
    "Noch gibt es keine Lichter: hebe erst eine Messung auf.",
  "light {n}": "Licht {n}",
  "A camera can judge only against a spectrum: take a white as the target, or a light whose spectrum was measured.":
    "Eine Kamera kann nur gegen ein Spektrum urteilen: nimm ein Weiß als Ziel oder ein Licht mit gemessenem Spektrum.",
  "The light is where it is meant to be.": "Das Licht ist, wie es gemeint ist.",
  "All {n} lights are where they are meant to be.": "Alle {n} Lichter sind, wie sie gemeint sind.",
  "{work}, {n} to dim": "{work}, {n} zu dimmen",
  "{out}: {n} to dim": "{out}: {n} zu dimmen",
  "{out}: no gel helps them": "{out}: keine Folie hilft ihnen",
  "Give a target white, or name the reference.": "Nenne ein Ziel-Weiß oder die Referenz.",
  "{name} has no spectrum: the observer judges it, not the camera.":
    "{name} hat kein Spektrum: das Auge urteilt, nicht die Kamera.",
  "{name}: {verdict} to the eye, {word} to the camera.":
    "{name}: {verdict} für das Auge, {word} für die Kamera.",
  // book/report.py, windows
  "facing {where}": "nach {where}",
  "hangs {gels}": "davor {gels}",
  "the id of the light whose readings are those of this window, or null":
    "die id des Lichts, dessen Messungen die dieses Fensters sind, oder null",
  // asks/hold.py
  "No windows yet: name one and what it reads.":
    "Noch keine Fenster: nenne eines und was es misst.",
  "No reading of this window on this day.": "Keine Messung an diesem Fenster an diesem Tag.",
  "Read this window to see how long its gel holds.":
    "Miss an diesem Fenster, dann steht hier, wie lange seine Folie passt.",
  "“{typed}” is not a time of day. Type it as 16:00.":
    "„{typed}“ ist hier keine Uhrzeit. Tippe sie als 16:00.",
  "The reading of {time} is left out. {why}": "Die Messung von {time} bleibt außen vor. {why}",
  "No reading between {one} and {two}: a cloud may have come and gone.":
    "Keine Messung zwischen {one} und {two}: eine Wolke kann gekommen und gegangen sein.",
  "As read at {time}.": "Wie um {time} gemessen.",
  "Between the readings of {one} and {two}.": "Zwischen den Messungen von {one} und {two}.",
  "No reading before {time}": "Keine Messung vor {time}",
  "No reading after {time}": "Keine Messung nach {time}",
  "{none}: by the sun's estimate {low} to {high} K, from cloud to clear sky.":
    "{none}: nach dem Sonnenstand geschätzt {low} bis {high} K, von bedeckt bis klar.",
  "{none}: estimated from the sun.": "{none}: nach dem Sonnenstand geschätzt.",
  "{none}, and no estimate: type where the location lies.":
    "{none}, und keine Schätzung: trag ein, wo das Motiv liegt.",
  "{none}, and the sun is too low for an estimate: read again.":
    "{none}, und für eine Schätzung steht die Sonne zu tief: miss noch einmal.",
  "{words} Before {first} and after {last} by the sun's estimate.":
    "{words} Vor {first} und nach {last} geschätzt nach dem Sonnenstand.",
  "{words} Before {first} by the sun's estimate.":
    "{words} Vor {first} geschätzt nach dem Sonnenstand.",
  "{words} After {last} by the sun's estimate.":
    "{words} Nach {last} geschätzt nach dem Sonnenstand.",
  "{words} A best guess: read it behind the gel.":
    "{words} Beste Schätzung: miss hinter der Folie nach.",
  "“{label}” says {text}: is that one number, or several readings?":
    "„{label}“ sagt {text}: ist das eine Zahl, oder sind es mehrere Messungen?",
  "{words} A best guess: read it again.": "{words} Beste Schätzung: miss noch einmal.",
  "at {time}": "um {time}",
  "Near from {sooner}, holds {span}, near until {later}.":
    "Nahe ab {sooner}, passt {span}, nahe bis {later}.",
  "Near from {sooner}, holds {span}.": "Nahe ab {sooner}, passt {span}.",
  "Holds {span}, near until {later}.": "Passt {span}, nahe bis {later}.",
  "Holds {span}.": "Passt {span}.",
  "Not known at {time}; nowhere in the day is it known to hold.":
    "Um {time} nicht bekannt; dass es passt, ist zu keiner Stunde bekannt.",
  "Not known at {time}; holds {spans}.": "Um {time} nicht bekannt; passt {spans}.",
  "Near at {time}; nowhere in the day is it known to hold.":
    "Um {time} nahe; dass es passt, ist zu keiner Stunde bekannt.",
  "Near at {time}; holds {spans}.": "Um {time} nahe; passt {spans}.",
  "Out at {time}; nowhere in the day is it known to hold.":
    "Um {time} daneben; dass es passt, ist zu keiner Stunde bekannt.",
  "Out at {time}; holds {spans}.": "Um {time} daneben; passt {spans}.",

  // asks/balance.py
  "{name} is left out: {why}": "{name} bleibt außen vor: {why}",
  "No light here can be balanced.": "Kein Licht hier lässt sich abstimmen.",
  "There are too many combinations to weigh all: each plan says how much light a better one might save at most.":
    "Es sind zu viele Kombinationen, um alle abzuwägen: jeder Plan sagt, wie viel Licht ein besserer höchstens sparen könnte.",
  "take off {pack}, hang {instead}": "{pack} abnehmen, {instead} davor",
  "{kelvin} K: {work}": "{kelvin} K: {work}",
  "{plan}; {lights} not matched.": "{plan}; nicht angeglichen: {lights}.",
  "{plan}; {lights} not matched; read {again} again when hung.":
    "{plan}; nicht angeglichen: {lights}; {again} nach dem Hängen noch einmal messen.",
  "Whites beside which {name} cannot be {meant} are left out.":
    "Weiß, neben dem {name} nicht {meant} sein kann, ist weggelassen.",
  "the lowest white": "das niedrigste Weiß",
  "the highest white": "das höchste Weiß",
  "the tint limit in Duv": "die Grenze des Farbstichs in Duv",
  "the tint step in Duv": "der Schritt des Farbstichs in Duv",
  "Every combination was weighed: nothing better exists within these bounds.":
    "Jede Kombination wurde abgewogen: innerhalb dieser Grenzen gibt es nichts Besseres.",
  "These plans are the best of their kind; whether fewer than {listed} lights could stay out was not proved.":
    "Diese Pläne sind die besten ihrer Art; ob weniger als {listed} Lichter daneben bleiben könnten, ist nicht bewiesen.",
  "leave as it is": "so lassen",
  "hang {pack}": "{pack} davor",
  "take off {pack}": "{pack} abnehmen",
  "{plan}; all {n} where they are meant to be.": "{plan}; alle {n} sind, wie sie gemeint sind.",
  "{plan}; by the best guess all {n} are where they are meant to be: read {again} again when hung.":
    "{plan}; nach bester Schätzung sind alle {n} wie gemeint: {again} nach dem Hängen noch einmal messen.",
  "{plan}; by the best guess every light holds: read {again} again when hung.":
    "{plan}; nach bester Schätzung passt jedes Licht: {again} nach dem Hängen noch einmal messen.",
  "{plan}; every light holds.": "{plan}; jedes Licht passt.",
  "{lights} and {count} more": "{lights} und {count} weitere",
  "Beside none of the whites can {name} be {meant}: take other whites, or another meaning.":
    "Neben keinem Weiß kann {name} {meant} sein: nimm anderes Weiß, oder meine es anders.",
  "The whites end at {to_k} K, below their start at {from_k} K.":
    "Die Weiß enden bei {to_k} K, unter ihrem Anfang bei {from_k} K.",
  "the step in K": "der Schritt in K",
  "These bounds and steps make {count} whites; at most {most_whites} are tried. Take a wider step or closer bounds.":
    "Diese Grenzen und Schritte ergeben {count} Weiß; höchstens {most_whites} werden versucht. Nimm größere Schritte oder engere Grenzen.",
  "gel {n} light": "{n} Licht mit Folie",
  "gel {n} lights": "{n} Lichter mit Folie",
  "no gel": "keine Folie",
  "take gel off {count}": "Folie ab bei {count}",
  "dial {dialled}": "{dialled} einstellen",
  "gains {stops} stops": "gewinnt {stops} Blenden",
  "{plan}; every light is as found.": "{plan}; jedes Licht ist wie vorgefunden.",
  "“{word}” is not something a light may do. Choose: gel, dial.":
    "„{word}“ kann mit einem Licht nicht getan werden. Zur Wahl stehen: gel, dial.",
  "What {name} can be dialled to was not stated: {low}–{high} K is assumed.":
    "Worauf sich {name} einstellen lässt, ist nicht gesagt: {low}–{high} K wird angenommen.",
  "A range to dial is given, but “may” does not say dial.":
    "Ein Bereich zum Einstellen ist angegeben, aber einstellen ist hier nicht erlaubt.",
  "Give the step in K or in mired, not both.":
    "Gib den Schritt in K oder in mired an, nicht beides.",
  "the step in mired": "der Schritt in mired",
  "dial x {x} y {y}": "einstellen auf x {x} y {y}",
  "dial {kelvin} K, x {x} y {y}": "einstellen auf {kelvin} K, x {x} y {y}",
  "{stops} stops in all": "{stops} Blenden insgesamt",
  // asks/book_link.py
  "This link has {count} characters; some messengers cut it. Share the file, or one setup.":
    "Dieser Link hat {count} Zeichen; manche Dienste schneiden ihn ab. Teile die Datei oder eine Einstellung.",
  // asks/book_merge.py
  "Name at least one book to merge.": "Nenne wenigstens ein Buch.",
  // asks/cameras.py
  "Give the camera to compare.": "Gib die Kamera an, die verglichen werden soll.",
  "Both cameras are called “{name}”: name them apart.":
    "Beide Kameras heißen „{name}“: gib ihnen verschiedene Namen.",
  "a camera can judge only against a spectrum, and this light has none.":
    "eine Kamera kann nur nach einem Spektrum urteilen, und dieses Licht hat keines.",
  "{steps} colour steps greener": "{steps} Farbschritte grüner",
  "{steps} colour steps more magenta": "{steps} Farbschritte magentafarbener",
  "{steps} colour steps cooler": "{steps} Farbschritte kühler",
  "{steps} colour steps warmer": "{steps} Farbschritte wärmer",
  "{first} and {second} see {light} alike.": "{first} und {second} sehen {light} gleich.",
  "{first} sees {light} {how} than {second}.": "{first} sieht {light} {how} als {second}.",
  "{first} and {second} see every edge alike.": "{first} und {second} sehen jede Kante gleich.",
  "{first} sees {light} {how} beside {other} than {second} does.":
    "{first} sieht {light} neben {other} {how} als {second}.",
  // asks/compare.py
  "both adapted to, or balanced for, the first light":
    "beide an das erste Licht angepasst oder darauf abgeglichen",
  "the first light": "das erste Licht",
  "the second light": "das zweite Licht",
  "SSI of {light} against {reference}": "SSI von {light} gegen {reference}",
  "{camera} and BT.709 display": "{camera} und Bildschirm nach BT.709",
  // asks/continuity.py
  "The book has no white for “{name}”: no target was kept with it, and its reference has no reading.":
    "Das Buch hat kein Weiß für „{name}“: kein Ziel wurde damit aufgehoben, und die Referenz hat keine Messung.",
  // asks/dial.py
  "Dial this, then read the lamp.": "Stelle das ein, dann miss die Lampe.",
  "The target is out of this lamp's reach: {remains} colour steps remain.":
    "Das Ziel liegt außerhalb dessen, was diese Lampe erreicht: {remains} Farbschritte bleiben.",
  "Hang {pack} to close them.": "{pack} davor schließt sie.",
  "The matrix of a correction has two rows of two numbers.":
    "Die Matrix einer Korrektur hat zwei Zeilen mit zwei Zahlen.",
  "The offset of a correction has two numbers.": "Der Versatz einer Korrektur hat zwei Zahlen.",
  "No lamp answers its dial like this matrix: forget it and start again.":
    "So antwortet keine Lampe auf ihre Einstellung: vergiss es, und fang neu an.",
  "It holds: leave it.": "Es passt: so lassen.",
  "Give a gamut or a range, not both.": "Gib einen Farbraum oder einen Bereich an, nicht beides.",
  "An earlier setting held: go back to it.": "Eine frühere Einstellung passte: geh zu ihr zurück.",
  "The lamp has no finer setting than those tried: this one came closest.":
    "Feiner als versucht lässt sich die Lampe nicht einstellen: diese Einstellung kam am nächsten.",
  // lights/tint.py
  "no plus or minus green": "kein Plus oder Minus Green",
  "{cut} plus green": "{cut} Plus Green",
  "{cut} minus green": "{cut} Minus Green",
  "{times} × full plus green": "{times} × volles Plus Green",
  "{times} × full minus green": "{times} × volles Minus Green",
  "{steps} colour steps out: dial this, then read again.":
    "{steps} Farbschritte daneben: stelle das ein, dann miss noch einmal.",
  // asks/dim.py
  "This is an estimate until the light is read again at that setting.":
    "Das ist eine Schätzung, bis das Licht bei dieser Einstellung neu gemessen ist.",
  "Below 0.1 % of its light a filament only glows: that is as far as this goes.":
    "Unter 0,1 % des Lichts glimmt ein Glühfaden nur noch: weiter geht es hier nicht.",
  "Dimming leaves it {steps} colour steps away, too {side}: that is for gel.":
    "Nach dem Dimmen ist es noch {steps} Farbschritte weg, zu {side}: das ist Sache der Folie.",
  "No filament gives this light: {shown} without the gels that are named, and tungsten melts at {melts_k} K. Name the gels that are on it, or choose another lamp type.":
    "Kein Glühfaden gibt dieses Licht: {shown} ohne die genannten Folien, und Wolfram schmilzt bei {melts_k} K. Nenne die Folien davor, oder wähle einen anderen Lampentyp.",
  "the light in percent": "das Licht in Prozent",
  "the volts in percent": "die Spannung in Prozent",
  "Dimming brings it no closer: it only makes it warmer.":
    "Dimmen bringt es nicht näher: es macht nur wärmer.",
  "Even at 0.1 % of its light it is still {steps} colour steps away.":
    "Auch bei 0,1 % des Lichts ist es noch {steps} Farbschritte weg.",
  green: "grün",
  magenta: "magenta",
  "Ask one thing: a colour, a part of the light, stops, or a part of the volts.":
    "Frage eines: eine Farbe, einen Teil des Lichts, Blenden oder einen Teil der Spannung.",
  "The colour asked for is the target already.": "Die gefragte Farbe ist schon das Ziel.",
  "Only a filament turns warmer as it is dimmed: if this is tungsten, say so as its lamp.":
    "Nur ein Glühfaden wird beim Dimmen wärmer: ist das Glühlicht, dann gib es als Lampe an.",
  "Dimming only makes it warmer: at full it reads {full} K, and {wanted} K is cooler.":
    "Dimmen macht es nur wärmer: voll misst es {full} K, und {wanted} K ist kühler.",
  "Give the setting of this reading in percent of light or of volts, one of them.":
    "Gib die Einstellung dieser Messung in Prozent des Lichts oder der Spannung an, eines davon.",
  "At {part} % the filament reads {kelvin} K, no warmer than at 100 %: check which reading is which.":
    "Bei {part} % misst der Glühfaden {kelvin} K, nicht wärmer als bei 100 %: prüfe, welche Messung welche ist.",
  "These readings contradict each other: less must always read warmer. Check which setting belongs to which reading.":
    "Diese Messungen widersprechen sich: weniger muss immer wärmer messen. Prüfe, welche Einstellung zu welcher Messung gehört.",
  "A dimmer only takes light away: it cannot be brighter than it was read. If it was dimmed then, read it at full.":
    "Ein Dimmer nimmt nur Licht weg: heller als gemessen geht es nicht. War es dabei gedimmt, dann miss es voll.",
  // asks/drive.py
  "Read each primary alone at full level first.":
    "Miss zuerst jede Primärfarbe allein bei voller Stufe.",
  "Levels are parts of the full light of each primary; a lamp whose dial does not follow its light needs them read at these settings.":
    "Stufen sind Teile des vollen Lichts jeder Primärfarbe; folgt der Regler einer Lampe nicht ihrem Licht, so miss sie bei diesen Einstellungen.",
  "A target without a CCT has no reference to be like: ask for the most light instead.":
    "Ein Ziel ohne CCT hat keine Referenz, der es gleichen könnte: frage stattdessen nach dem meisten Licht.",
  "How much this primary gives is missing: read its lux at full level.":
    "Es fehlt, wie viel diese Primärfarbe gibt: miss ihre Lux bei voller Stufe.",
  "Spectral similarity needs the spectrum of every primary; by x y and lux only the most light can be found.":
    "Ähnlichkeit des Spektrums braucht das Spektrum jeder Primärfarbe; aus x y und Lux lässt sich nur das meiste Licht finden.",
  "primary {n}": "Primärfarbe {n}",
  // asks/even.py
  "point {n}": "Punkt {n}",
  // asks/expose.py
  "{lux} lx ({fc} fc)": "{lux} lx ({fc} fc)",
  "{amount} lx·s a burst": "{amount} lx·s je Blitz",
  "ISO {iso}": "ISO {iso}",
  "{fps} frames a second": "{fps} Bilder in der Sekunde",
  "{stops} of filter (ND {density})": "{stops} Filter (ND {density})",
  "right as it is": "richtig, wie es ist",
  "{stops} over": "{stops} darüber",
  "{stops} under": "{stops} darunter",
  "A T-number holds the loss of the lens already: leave it out.":
    "Eine T-Blende enthält den Verlust des Objektivs schon: lass ihn weg.",
  "{stops} short of light": "{stops} zu wenig Licht",
  "The shutter would be open for {shutter_deg}°, longer than a frame at {fps} frames a second: add light, open the lens or raise the ISO.":
    "Der Verschluss wäre {shutter_deg}° offen, länger als ein Bild bei {fps} Bildern in der Sekunde: mehr Licht, Blende auf oder ISO höher.",
  "Too dark without any filter: add light, open the lens or raise the ISO.":
    "Auch ohne Filter zu dunkel: mehr Licht, Blende auf oder ISO höher.",
  "Few lenses open this far: add light, or raise the ISO or the time.":
    "So weit öffnen wenige Objektive: mehr Licht, oder ISO oder Zeit höher.",
  "Few lenses close this far: take a neutral density filter.":
    "So weit schließen wenige Objektive: nimm ein Graufilter.",
  "A shutter this short can cut a burst off, or cover a part of the frame: test it.":
    "Ein so kurzer Verschluss kann einen Blitz abschneiden oder einen Teil des Bildes verdecken: probiere es.",
  "Give a steady light (lx) or a flash (lx·s), not both of them.":
    "Gib ein Dauerlicht (lx) oder einen Blitz (lx·s) an, nicht beides.",
  // asks/falloff.py
  "{metres} m ({feet} ft) from the lamp": "{metres} m ({feet} ft) von der Lampe",
  "{moved}, reads {lux} lx ({fc} fc)": "{moved}, gibt {lux} lx ({fc} fc)",
  "{place}: no change": "{place}: unverändert",
  "The distance is missing: how far the lamp is where it was read.":
    "Der Abstand fehlt: wie weit die Lampe bei der Messung entfernt war.",
  "Ask one thing: a distance, the light wanted, or the stops to lose.":
    "Frage eines: einen Abstand, das gewünschte Licht oder die Blenden, die weg sollen.",
  "The light is missing: what it reads now, in lux or foot-candles.":
    "Das Licht fehlt: was jetzt gemessen wird, in Lux oder Footcandle.",
  "{place}: {stops} more": "{place}: {stops} mehr",
  "{place}: {stops} less": "{place}: {stops} weniger",
  "Inverse square: for a bare lamp further away than five times its width. A lens, a reflector or a large frame falls off more slowly; read it there.":
    "Abstandsgesetz: für eine blanke Lampe, weiter weg als das Fünffache ihrer Breite. Linse, Reflektor oder großer Rahmen fallen langsamer ab; miss dort.",
  "Mind the heat on skin, cloth and gel when a lamp comes nearer.":
    "Achte auf die Hitze auf Haut, Stoff und Folie, wenn eine Lampe näher kommt.",
  "At {near} m the source of {source} m is nearer than five times its width: it falls off more slowly than the inverse square. Read it there.":
    "Bei {near} m ist die Quelle von {source} m näher als das Fünffache ihrer Breite: sie fällt langsamer ab als nach dem Abstandsgesetz. Miss dort.",
  // asks/field.py
  "Give one list of gels, or none, for each light.":
    "Gib für jedes Licht eine Liste von Folien an, oder keine.",
  "The gels of a light are a list of their names.":
    "Die Folien eines Lichts sind eine Liste ihrer Namen.",
  // asks/flash_mix.py
  "How much the flash gives is missing: read it in lux·s, without the ambient.":
    "Es fehlt, wie viel der Blitz gibt: miss ihn in lx·s, ohne das Umgebungslicht.",
  "How much the ambient gives is missing: read it in lux, without the flash.":
    "Es fehlt, wie viel das Umgebungslicht gibt: miss es in Lux, ohne den Blitz.",
  "The shutter is missing: give its time, such as 1/60, or its angle with the frame rate.":
    "Der Verschluss fehlt: gib seine Zeit an, etwa 1/60, oder seinen Winkel mit Bildrate.",
  "At so short a time the shutter may cut the burst or not sync with it: check the sync speed and read the flash at this setting.":
    "Bei so kurzer Zeit kann der Verschluss den Blitz abschneiden oder nicht synchron sein: prüfe die Synchronzeit, und miss den Blitz bei dieser Einstellung.",
  // asks/flicker.py
  "use {angle}": "nimm {angle}",
  "Flickers by up to {percent} % ({size}): {advice}":
    "Flimmert um bis zu {percent} % ({size}): {advice}",
  "{Place} is on {mains_hz} Hz mains: at {angle} and {fps} fps its lamps will flicker; {advice}.":
    "{Place} hängt an {mains_hz} Hz Netz: bei {angle} und {fps} Bildern in der Sekunde flackern Lampen am Netz; {advice}.",
  "{hz} Hz is the lowest frequency that fits. The light may pulse at a whole multiple of it: the shutters below are safe for those as well.":
    "{hz} Hz ist die niedrigste Frequenz, die passt. Das Licht kann mit einem ganzen Vielfachen pulsen: die Verschlüsse unten sind auch dafür sicher.",
  "no shutter holds a whole pulse at {fps} frames a second":
    "kein Verschluss fasst einen ganzen Puls bei {fps} Bildern in der Sekunde",
  "use {angle}, or shoot {rate} fps": "nimm {angle}, oder drehe mit {rate} Bildern",
  "Steady: the shutter holds {n} pulse": "Ruhig: der Verschluss fasst {n} Puls",
  "Steady: the shutter holds {n} pulses": "Ruhig: der Verschluss fasst {n} Pulse",
  "Steady from frame to frame: each frame starts at the same point of a pulse":
    "Ruhig von Bild zu Bild: jedes beginnt an derselben Stelle eines Pulses",
  "to black": "bis Schwarz",
  "A shutter of {time_words} is longer than a frame at {fps} frames a second.":
    "Ein Verschluss von {time_words} ist länger als ein Bild bei {fps} Bildern in der Sekunde.",
  "Which light? Give mains_hz (50 or 60), light_hz (a PWM frequency) or two measured shutter results.":
    "Welches Licht? Gib die Netzfrequenz an (50 oder 60), eine Pulsfrequenz oder zwei gemessene Verschlüsse.",
  "An unknown light needs two different shutter times at which no flicker was seen.":
    "Ein unbekanntes Licht braucht zwei verschiedene Verschlusszeiten, bei denen nichts flimmerte.",
  "No one frequency explains these results. Check them, and measure at shorter shutters: the two shortest without flicker tell most.":
    "Keine einzelne Frequenz erklärt diese Ergebnisse. Prüfe sie, und miss bei kürzeren Verschlüssen: die zwei kürzesten ohne Flimmern sagen am meisten.",
  "The shutters hold many pulses, so the frequency is loose: measure again with shorter ones.":
    "Die Verschlüsse fassen viele Pulse, die Frequenz ist also ungenau: miss noch einmal mit kürzeren.",
  "use {time}": "nimm {time}",
  "Any shutter is steady at {fps} frames a second":
    "Jeder Verschluss ist ruhig bei {fps} Bildern in der Sekunde",
  "{amount} stops": "{amount} Blenden",
  "{amount} stop": "{amount} Blende",
  "Above {hz} frames a second every frame sees a part of one pulse, whatever the shutter: light this shot with lamps on direct current or a much faster drive.":
    "Über {hz} Bildern in der Sekunde sieht jedes Bild nur einen Teil eines Pulses, bei jedem Verschluss: beleuchte das mit Lampen an Gleichstrom oder viel schnellerer Ansteuerung.",
  "A rolling shutter can still show a standing band: a shutter that holds whole pulses loses it.":
    "Ein Rolling Shutter kann noch ein stehendes Band zeigen: ein Verschluss, der ganze Pulse fasst, wird es los.",
  "The pulse drifts through the picture once in {beat_hz} s: a short test does not show it.":
    "Der Puls wandert einmal in {beat_hz} s durch das Bild: ein kurzer Test zeigt es nicht.",
  "The depth is for a light that falls to nothing between pulses; filaments and smoothed drives pulse less. Type the modulation where it is known.":
    "Die Tiefe gilt für ein Licht, das zwischen den Pulsen erlischt; Glühfäden und geglättete Ansteuerungen pulsen weniger. Tippe die Modulation, wo sie bekannt ist.",
  "Mains of {mains} Hz is unusual: 50 and 60 Hz are what public grids run at.":
    "Ein Netz mit {mains} Hz ist ungewöhnlich: öffentliche Netze laufen mit 50 oder 60 Hz.",
  "This counts pulses of light: a lamp on {hz} Hz mains pulses {pulses} times a second. If you mean the mains, give {hz} Hz there.":
    "Gezählt werden Lichtpulse: eine Lampe an {hz} Hz Netz pulst {pulses}-mal in der Sekunde. Ist das Netz gemeint, gib dort {hz} Hz an.",
  "Each result needs its shutter time or angle.":
    "Jedes Ergebnis braucht seine Zeit oder seinen Winkel.",
  "Say whether flicker was seen or not.": "Sag, ob es flimmerte oder nicht.",
  "this place": "dieser Ort",
  "A shutter angle needs the frame rate.": "Ein Verschlusswinkel braucht die Bildrate.",
  // asks/import_gel.py
  "A gel is read from a transmittance, nothing else.":
    "Eine Folie wird aus einer Transmission gelesen, aus nichts anderem.",
  "{name} is a light by its unit, not a transmittance. To learn a gel from two lights, load them as the bare and the gelled reading.":
    "{name} ist der Einheit nach ein Licht, keine Transmission. Um eine Folie aus zwei Lichtern zu lernen, lade sie als Messung ohne und mit Folie.",
  // asks/join_parts.py
  "All {total} codes are here.": "Alle {total} Codes sind da.",
  "{count} of {total} scanned; still missing: {codes}.":
    "{count} von {total} gelesen; es fehlen noch: {codes}.",
  // asks/learn_gel.py
  "{mireds} mired takes a light of {reference} K beyond any white.":
    "{mireds} mired führen ein Licht von {reference} K über jedes Weiß hinaus.",
  "Give two readings or a shift, not both.":
    "Gib zwei Messungen oder eine Verschiebung an, nicht beides.",
  "With the gel there is {share} times the light of the bare lamp. Are the two readings swapped, or was the lamp or the meter moved?":
    "Mit der Folie ist {share}-mal so viel Licht wie ohne. Sind die Messungen vertauscht, oder wurde Lampe oder Messgerät bewegt?",
  // asks/levels.py
  "There is no light number {index} to be the key.":
    "Es gibt kein Licht Nummer {index}, das Führung sein könnte.",
  // asks/mix.py
  "a strong edge in colour": "eine starke Farbkante",
  "no edge in colour to be seen": "keine Farbkante zu sehen",
  "an edge in colour that a careful eye finds": "eine Farbkante, die ein genaues Auge findet",
  "a clear edge in colour": "eine deutliche Farbkante",
  "{flash} is read in lux·s and {other} in lux: these cannot be weighed together. Type the share of each in lux, or use the mixture of flash and ambient.":
    "{flash} ist in Lux·s gemessen und {other} in Lux: Das lässt sich nicht gegeneinander wiegen. Gib den Anteil von jedem in Lux ein, oder nimm die Mischung von Blitz und Umgebungslicht.",
  "There are no lights to mix yet: give one or more.":
    "Noch gibt es keine Lichter zum Mischen: gib mindestens eines an.",
  "Every light is at zero: nothing is left to mix.":
    "Jedes Licht steht auf null: nichts bleibt zu mischen.",
  "{name} has no lux while others have: type its share, or leave lux out for all of them to count as equal.":
    "{name} hat keine Lux, andere schon: tippe den Anteil, oder lass Lux bei allen weg, dann zählen sie gleich.",
  "Give the share in lux or in foot-candles, not both of them.":
    "Gib den Anteil in Lux oder in Footcandle an, nicht beides.",
  "the dimmer in percent": "der Dimmer in Prozent",
  "The inverse square needs two distances: where the light was read and where it stands now.":
    "Das Abstandsgesetz braucht zwei Abstände: wo das Licht gemessen wurde und wo es jetzt steht.",
  "{edge}, and {stops} between them": "{edge}, und {stops} dazwischen",
  "{name}: a dimmed filament turns warmer; its colour is an estimate until it is read again at that setting.":
    "{name}: ein gedimmter Glühfaden wird wärmer; seine Farbe ist eine Schätzung, bis er bei dieser Einstellung neu gemessen ist.",
  "{name}: a dimmed tungsten lamp turns warmer than it was read; read it again at that setting.":
    "{name}: eine gedimmte Glühlampe wird wärmer, als sie gemessen wurde; miss sie bei dieser Einstellung noch einmal.",
  "the share in lux": "der Anteil in Lux",
  "the share in foot-candles": "der Anteil in Footcandle",
  "A ribbon shows the edge between two mixtures: give the one beside too.":
    "Das Band zeigt die Kante zwischen zwei Mischungen: gib auch die daneben an.",
  "The white is for the ribbon: say in how many places to show it.":
    "Das Weiß gilt für das Band: gib an, an wie vielen Stellen es gezeigt wird.",
  "The colour changes evenly across the edge.": "Die Farbe ändert sich gleichmäßig über die Kante.",
  "The edge is hardest beside the second zone: half of the change in colour is in its last {near}.":
    "Am härtesten ist die Kante neben der zweiten Zone: die Hälfte des Farbwechsels liegt in ihren letzten {near}.",
  "The edge is hardest beside the first zone: half of the change in colour is in its first {near}.":
    "Am härtesten ist die Kante neben der ersten Zone: die Hälfte des Farbwechsels liegt in ihren ersten {near}.",
  // asks/open_link.py
  "There is no link here: paste the whole address.":
    "Hier ist kein Link: setze die ganze Adresse ein.",
  // asks/order.py
  "{count} of {size}": "{count} Stück {size}",
  "Order {gels}": "Bestellen: {gels}",
  "No size yet for some {name}: it is not in the order.":
    "Für {name} fehlt zum Teil die Größe: das steht nicht in der Bestellung.",
  "Nothing to order: there is enough in stock": "Nichts zu bestellen: der Bestand reicht",
  "enough in stock": "genug im Bestand",
  "no size yet": "noch keine Größe",
  "These are sizes to buy: leave the count out.":
    "Das sind Größen zum Kaufen: lass die Anzahl weg.",
  "The roll is too narrow for the overlap at a seam.":
    "Die Rolle ist zu schmal neben der Überlappung an einer Naht.",
  "No size is known yet": "Noch ist keine Größe bekannt",
  "Nothing hangs yet": "Noch hängt nichts",
  "Which gel hangs here? Give its name.": "Welche Folie hängt hier? Nenne ihren Namen.",
  "That is more gel than one order can hold; divide it.":
    "Das ist mehr Folie, als eine Bestellung fasst; teile sie auf.",
  // asks/render.py
  "SSI, matching reference": "SSI, passende Referenz",
  "SSI, black body 3200 K": "SSI, schwarzer Strahler 3200 K",
  "SSI, D55": "SSI, D55",
  "R{n}, {colour}": "R{n}, {colour}",
  "SSI, {light}": "SSI, {light}",
  // asks/report.py
  "no white was kept": "kein Weiß aufgehoben",
  // asks/since.py
  "There is no reading of this light yet.": "Von diesem Licht gibt es noch keine Messung.",
  // asks/sun.py
  "It sees {percent} % of the sky that an open view would show.":
    "Es sieht {percent} % des Himmels, den eine freie Aussicht zeigte.",
  "Never look at the sun, and never through a lens, a finder or a spot meter: it blinds. Keep lenses and sensors off it too.":
    "Nie in die Sonne sehen, und nie durch Objektiv, Sucher oder Spotmeter: sie macht blind. Halte auch Objektive und Sensoren von ihr fern.",
  "The sun does not set on this day.": "Die Sonne geht an diesem Tag nicht unter.",
  "The sun does not rise on this day.": "Die Sonne geht an diesem Tag nicht auf.",
  "{start} to {end}": "{start} bis {end}",
  "{Day}; {top}° high at most.": "{Day}; höchstens {top}° hoch.",
  "Direct sun in the window facing {point} {spans}.":
    "Direkte Sonne im Fenster, das nach {point} geht: {spans}.",
  "all day": "den ganzen Tag",
  "until {clock}": "bis {clock}",
  "from {clock}": "ab {clock}",
  "An even cloud cover is taken as CIE D65, average daylight, all day.":
    "Eine gleichmäßige Wolkendecke gilt als CIE D65, mittleres Tageslicht, den ganzen Tag.",
  "{Sky} after Bird and Riordan (1986): air, haze and ozone colour a sun of 5900 K. Sun: facing it; shade: sky alone; open: both on level ground. None while the sun is low (sun under {sun}°, sky under {sky}°).":
    "{Sky} nach Bird und Riordan (1986): Luft, Dunst und Ozon färben eine Sonne von 5900 K. Sonne: ihr zugewandt; Schatten: Himmel allein; offen: beides auf ebenem Boden. Keine, solange die Sonne tief steht (Sonne unter {sun}°, Himmel unter {sky}°).",
  "Estimate, not a reading. {how} Cloud and walls change it.":
    "Schätzung, keine Messung. {how} Wolken und Wände ändern sie.",
  "{never} It stands {top}° high at most.": "{never} Sie steht höchstens {top}° hoch.",
  "{day} (no sunset on this day)": "{day} (kein Untergang an diesem Tag)",
  "No sun in the window facing {point}: the sun does not rise on this day.":
    "Keine Sonne im Fenster nach {point}: die Sonne geht an diesem Tag nicht auf.",
  "No direct sun in the window facing {point} on this day.":
    "An diesem Tag keine direkte Sonne im Fenster nach {point}.",
  "The sun is computed from 1950 to 2100 only.": "Die Sonne wird nur von 1950 bis 2100 berechnet.",
  "sunrise {times}": "Aufgang {times}",
  "sunset {times}": "Untergang {times}",
  "{day} (no sunrise on this day)": "{day} (kein Aufgang an diesem Tag)",
  "Local time of UTC{offset} is far from what longitude {longitude}° suggests (about {solar}): check the sign of both.":
    "Ortszeit UTC{offset} liegt weit von dem, was {longitude}° Länge erwarten lässt (etwa {solar}): prüfe beide Vorzeichen.",
  "“{typed}” is not a date here. Type year-month-day, such as 2026-11-25.":
    "„{typed}“ ist hier kein Datum. Tippe Jahr-Monat-Tag, etwa 2026-11-25.",
  "a hazy sky": "dunstiger Himmel",
  "a clear sky": "klarer Himmel",
  // asks/trim.py
  "Adds nothing here: {lamps}.": "Bringt hier nichts: {lamps}.",
  "Dimmed so, {then} stops lie between the darkest and the brightest point, where it was {now}.":
    "So gedimmt liegen {then} Blenden zwischen dem dunkelsten und dem hellsten Punkt; vorher waren es {now}.",
  "Dimming alone does not get there. Move {moves}, then read again.":
    "Dimmen allein genügt nicht. Rücke {moves}, dann miss noch einmal.",
  "Give {name} alone, or the others without it, not both.":
    "Gib {name} allein an oder die anderen ohne sie, nicht beides.",
  "It holds as it is: the lamps may stay as they are.":
    "Es stimmt schon: die Lampen können bleiben, wie sie sind.",
  "No lamp lights one of the points: read each lamp there, or leave the point out.":
    "Einen der Punkte erhellt keine Lampe: miss dort jede Lampe, oder lass den Punkt weg.",
  "Read each lamp alone, or all but one of them, to know what it does here.":
    "Miss jede Lampe allein oder alle bis auf eine: erst dann ist klar, was sie hier tut.",
  "The lamps alone add up to {part} more than all of them together: read them again, or see whether one was moved.":
    "Die Lampen einzeln ergeben {part} mehr als alle zusammen: miss noch einmal, oder sieh nach, ob eine bewegt wurde.",
  "lamp {n}": "Lampe {n}",
  "{name} has {count} readings; the surface has {points} points.":
    "{name} hat {count} Messungen, die Fläche {points} Punkte.",
  "{name} toward the {way}": "{name} nach {way}",
  "{name}: a level is zero or more.": "{name}: ein Wert ist null oder mehr.",
  // asks/units.py
  "Nothing to convert: give {fields}.": "Nichts umzurechnen; nötig ist {fields}.",
  "A ratio needs two lights: give both.": "Ein Verhältnis braucht zwei Lichter: gib beide an.",
  // asks/unmix.py
  "x {x}, y {y}": "x {x}, y {y}",
  "x {x}, y {y}, about {kelvin} K": "x {x}, y {y}, etwa {kelvin} K",
  "Give the reading of each light alone.": "Gib die Messung jedes Lichts allein an.",
  "The sum has light that none of these give: it is {offset} against their closest mixture. Look for a source that pulls that way.":
    "Die Summe enthält Licht, das keines von diesen gibt: sie ist {offset} gegen ihre nächste Mischung. Suche eine Quelle, die in diese Richtung zieht.",
  "The sum has {amount} {unit} of light that none of these give: {colour}.":
    "Die Summe enthält {amount} {unit} Licht, das keines von diesen gibt: {colour}.",
  "The sum has light that none of these give: {colour}.":
    "Die Summe enthält Licht, das keines von diesen gibt: {colour}.",
  "{count} lights cannot be told apart by x y and lux: three at most. Load their spectra, or switch some off and read again.":
    "{count} Lichter lassen sich aus x y und Lux nicht trennen: höchstens drei. Lade ihre Spektren, oder schalte einige ab und miss noch einmal.",
  "The readings tell these lights apart.": "Die Messungen trennen diese Lichter.",
  "{lights} are too much alike to tell their shares apart; together they give {together}.":
    "{lights} sind sich zu ähnlich, um ihre Anteile zu trennen; zusammen geben sie {together}.",
  "Take these shares as a rough guess: a small error of a reading moves them.":
    "Nimm diese Anteile als grobe Schätzung: ein kleiner Messfehler verschiebt sie.",
  // asks/windows.py
  "Reach and height: work from a platform or tower made for it, never lean from a ladder or out of a window; local codes and licensed practice decide.":
    "Höhe: arbeite von einem dafür gebauten Podest oder Gerüst, lehne dich nie von einer Leiter oder aus dem Fenster; örtliche Vorschriften und Befugte entscheiden.",
  "Wind: gel and frames outside are sails. Tie them off on every side, watch the forecast, and take them down in time.":
    "Wind: Folie und Rahmen draußen sind Segel. Sichere sie an jeder Seite, achte auf die Vorhersage, und nimm sie rechtzeitig ab.",
  "Never on glass that traps heat (insulating, laminated, wired, coated or leaded) without asking the building: gel in the sun heats the pane and can crack it.":
    "Nie auf Glas, das Hitze staut (Isolier-, Verbund-, Draht-, beschichtetes oder Bleiglas), ohne das Haus zu fragen: Folie in der Sonne erhitzt die Scheibe und kann sie sprengen.",
  "Keep exits, vents and alarms free.": "Ausgänge, Lüftungen und Melder frei halten.",
  "Nothing fits": "Nichts passt",
  "{rolls}, {layers} layers": "{rolls}, {layers} Lagen",
  "{percent} % offcuts": "{percent} % Verschnitt",
  right: "stimmt es",
  "{gels}, then {rest}": "{gels}, dann {rest}",
  "No windows yet: give the width, height and count of each kind.":
    "Noch keine Fenster: gib Breite, Höhe und Anzahl jeder Art an.",
  "There is no roll to cut from: every count is 0.":
    "Es gibt keine Rolle zum Schneiden: jede Anzahl ist 0.",
  "The roll is too small for this much glass with the overlap: take a wider roll or less overlap, or divide the windows.":
    "Die Rolle ist neben der Überlappung zu klein für so viel Glas: nimm eine breitere Rolle oder weniger Überlappung, oder teile die Fenster auf.",
  "{size}, {length} used": "{size}, {length} gebraucht",
  "{length} of that width by area alone, {rolls}":
    "{length} dieser Breite allein nach der Fläche, {rolls}",
  "{n} seam": "{n} Naht",
  "{n} seams": "{n} Nähte",
  "no seam": "keine Naht",
  "Not enough roll: {n} piece is left to cut.":
    "Die Rollen reichen nicht: {n} Stück bleibt zu schneiden.",
  "Not enough roll: {n} pieces are left to cut.":
    "Die Rollen reichen nicht: {n} Stück bleiben zu schneiden.",
  "Hide seams behind a glazing bar where there is one, and tape them flat.":
    "Lege Nähte hinter eine Sprosse, wo es eine gibt, und klebe sie flach.",
  "Another direction of the gel may need fewer seams.":
    "In anderer Richtung braucht die Folie vielleicht weniger Nähte.",
  "window {n}": "Fenster {n}",
  "That makes more than {most} panes; ask for fewer windows at a time.":
    "Das sind mehr als {most} Scheiben; frage nach weniger Fenstern auf einmal.",
  "{n} roll of {size}": "{n} Rolle {size}",
  "{n} rolls of {size}": "{n} Rollen {size}",
  "Give stops, or what is measured and wanted.":
    "Gib Blenden an, oder was gemessen und gewünscht ist.",
  "{Name} is missing: the light at the window.": "{Name} fehlt: das Licht am Fenster.",
  "{n} roll": "{n} Rolle",
  "{n} rolls": "{n} Rollen",
  "No ND": "Kein ND",
  // asks/write_spectra.py
  "There is no spectrum to write; choose at least one.":
    "Es gibt kein Spektrum zu schreiben; wähle mindestens eines.",
  "“created” must be a date and time, such as 2026-11-25T19:42:10.":
    "„created“ muss Datum und Uhrzeit sein, etwa 2026-11-25T19:42:10.",
  "The wavelengths at {nm} nm are closer than a file can hold.":
    "Die Wellenlängen bei {nm} nm liegen dichter, als eine Datei es fasst.",
  // book/canonical.py
  "A text holds half a character, which nothing can show: type it again.":
    "Ein Text enthält ein halbes Zeichen, das nichts darstellen kann: tippe ihn neu.",
  "This cannot be written as JSON: {reason}.": "Das lässt sich nicht als JSON schreiben: {reason}.",
  // book/entries.py
  production: "Produktion",
  location: "Motiv",
  setup: "Einstellung",
  light: "Licht",
  reading: "Messung",
  surface: "Fläche",
  gel: "Folie",
  kit: "Ausstattung",
  "Together they have {count} entries; a book holds at most {most}.":
    "Zusammen haben sie {count} Einträge; ein Buch fasst höchstens {most}.",
  "{marked} entries had the id of another with different content; both are kept.":
    "{marked} Einträge hatten die Kennung eines anderen mit anderem Inhalt; beide bleiben.",
  "“{at}” is not a date and time with its zone.": "„{at}“ ist kein Datum mit Uhrzeit und Zone.",
  // book/file.py
  "Entry {n}": "Eintrag {n}",
  "It is nested more than {deepest} deep. {hint}":
    "Es ist mehr als {deepest} Ebenen tief verschachtelt. {hint}",
  "{entry} (a {kind})": "{entry} ({kind})",
  "The text has {count} characters; at most {longest} fit.":
    "Der Text hat {count} Zeichen; höchstens {longest} passen.",
  "There is nothing in it. {hint}": "Es steht nichts darin. {hint}",
  "It holds {word}, which is not a number in JSON.":
    "Es enthält {word}, was in JSON keine Zahl ist.",
  "This is not a book of Evenkelvin. {hint}": "Das ist kein Buch von Evenkelvin. {hint}",
  "The book was changed after it was written: its contents do not give the hash that it states. Compare it with the place it came from.":
    "Das Buch wurde nach dem Schreiben geändert: sein Inhalt ergibt nicht die Prüfsumme, die es nennt. Vergleiche es mit seiner Quelle.",
  "The field {field}": "Das Feld {field}",
  "The book": "Das Buch",
  "It ends too early: it was cut on the way": "Es endet zu früh: es wurde unterwegs abgeschnitten",
  "It is not JSON: {reason}": "Es ist kein JSON: {reason}",
  "{what} (line {line}). {hint}": "{what} (Zeile {line}). {hint}",
  "It holds a number with thousands of digits. {hint}":
    "Es enthält eine Zahl mit Tausenden von Ziffern. {hint}",
  "Entry {n}: {message}": "Eintrag {n}: {message}",
  // book/given.py
  "There is no book here: open one, or keep a reading first.":
    "Hier ist kein Buch: öffne eines, oder hebe erst eine Messung auf.",
  // book/link.py
  "Ask for it again, or for the file.": "Bitte noch einmal darum oder um die Datei.",
  "The link ends too early: it was cut on the way. {again}":
    "Der Link endet zu früh: er wurde unterwegs abgeschnitten. {again}",
  "This is too large for a link ({count} characters; at most {longest_link}). Share one setup, or the file.":
    "Das ist zu groß für einen Link ({count} Zeichen; höchstens {longest_link}). Teile eine Einstellung oder die Datei.",
  "The link is longer than {longest_link} characters. {again}":
    "Der Link ist länger als {longest_link} Zeichen. {again}",
  "This is one code of a series: scan the others too.":
    "Das ist ein Code einer Reihe: lies auch die anderen.",
  "This is not a link of Evenkelvin (at “{shown}”). {again}":
    "Das ist kein Link von Evenkelvin (bei „{shown}“). {again}",
  "The link was cut or changed on the way. {again}":
    "Der Link wurde unterwegs abgeschnitten oder verändert. {again}",
  "The link unfolds to more than {longest_json} characters. {again}":
    "Der Link entfaltet sich auf mehr als {longest_json} Zeichen. {again}",
  "Something was added to the link on the way. {again}":
    "Dem Link wurde unterwegs etwas angehängt. {again}",
  "This would take {total} codes; at most {most_parts} make a series. Share one setup, or the file.":
    "Das bräuchte {total} Codes; höchstens {most_parts} bilden eine Reihe. Teile eine Einstellung oder die Datei.",
  "No code was scanned yet.": "Noch ist kein Code gelesen.",
  "The link was changed on the way. {again}": "Der Link wurde unterwegs verändert. {again}",
  "The link does not hold text. {again}": "Der Link enthält keinen Text. {again}",
  "This is not a code of a series of Evenkelvin: scan it again.":
    "Das ist kein Code einer Reihe von Evenkelvin: lies ihn noch einmal.",
  "This code says it is number {index} of {total}: scan it again.":
    "Dieser Code sagt, er sei Nummer {index} von {total}: lies ihn noch einmal.",
  "This code belongs to another series: scan one series at a time.":
    "Dieser Code gehört zu einer anderen Reihe: lies eine nach der anderen.",
  "Code {index} was read twice and differs: scan it again.":
    "Code {index} wurde zweimal verschieden gelesen: lies ihn noch einmal.",
  // book/meaning.py
  "The book has no {kinds} with the id “{id}”.":
    "Das Buch hat nichts mit der Kennung „{id}“ ({kinds}).",
  "unnamed {kind}": "{kind} ohne Namen",
  // book/migrations.py
  "Open the file that Evenkelvin exported, or export it again where it came from.":
    "Öffne die Datei, die Evenkelvin ausgegeben hat, oder gib sie dort neu aus, wo sie herkommt.",
  "This book does not say its version. {hint}": "Dieses Buch nennt seine Version nicht. {hint}",
  "This book has version {found}, written by a newer Evenkelvin; this one reads up to version {version}. Update the app, then open it again.":
    "Dieses Buch hat Version {found}, von einem neueren Evenkelvin geschrieben; dieses liest bis Version {version}. Aktualisiere die App und öffne es noch einmal.",
  "Version {found} of the book was never in use. {hint}":
    "Version {found} des Buchs war nie in Gebrauch. {hint}",
  // book/report.py
  "Gel, frames and anything in the wind need safety bonds and a second pair of hands.":
    "Folie, Rahmen und alles im Wind braucht Sicherungen und ein zweites Paar Hände.",
  "Never gel glass that traps heat (insulating, laminated, wired, coated or leaded) without asking the building; tie gel and frames for the wind, and keep exits and vents free.":
    "Nie Glas mit Folie bekleben, das Hitze staut (Isolier-, Verbund-, Draht-, beschichtetes oder Bleiglas), ohne das Haus zu fragen; Folie und Rahmen gegen Wind sichern, Ausgänge und Lüftungen frei halten.",
  "Tungsten heads run hot: let them cool before re-gelling, keep gel clear of the lens and check it for scorching.":
    "Kunstlichtköpfe werden heiß: lass sie vor dem Folienwechsel abkühlen, halte Folie von der Linse fern und sieh nach Brandspuren.",
  "HMI and metal-halide heads emit UV without their safety glass: never run one with cracked or missing glass, and keep gel clear of the hot lens.":
    "HMI- und Halogen-Metalldampf-Köpfe strahlen ohne Schutzglas UV ab: nie mit gesprungenem oder fehlendem Glas betreiben, und Folie von der heißen Linse fernhalten.",
  "Plasma heads run hot and emit UV without their glass: do not open a running head.":
    "Plasmaköpfe werden heiß und strahlen ohne Glas UV ab: einen laufenden Kopf nicht öffnen.",
  "Fluorescent tubes hold mercury: pack used and broken ones apart.":
    "Leuchtstoffröhren enthalten Quecksilber: alte und zerbrochene getrennt verpacken.",
  "Mercury lamps emit UV when the outer bulb is broken, and hold mercury: leave them to whoever runs them.":
    "Quecksilberlampen geben UV ab, wenn der Außenkolben gebrochen ist, und enthalten Quecksilber: überlass sie denen, die sie betreiben.",
  "Sodium street and deck lights are not ours to open or gel: ask whoever runs them.":
    "Natriumlampen an Straße und Deck dürfen wir nicht öffnen oder mit Folie versehen: frage, wer sie betreibt.",
  "Flash heads store a deadly charge: switch off and discharge before changing tubes.":
    "Blitzköpfe speichern eine tödliche Ladung: vor dem Röhrenwechsel abschalten und entladen.",
  "Never look at the sun, and never aim a meter at it by eye.":
    "Nie in die Sonne sehen, und auch das Messgerät nicht mit dem Auge auf sie richten.",
  "Work at height, rigging and mains power: by those licensed for it, by the local code.":
    "Arbeit in der Höhe, Rigging und Netzstrom: nur durch Befugte, nach den örtlichen Vorschriften.",
  "Gel figures are nominal unless measured: re-check each light once its gel hangs.":
    "Folienwerte sind nominell, wenn nicht gemessen: prüfe jedes Licht nach, sobald seine Folie hängt.",
  "{across} × {down} panes each": "je {across} × {down} Scheiben",
  // book/schema.py
  nothing: "nichts",
  "true or false": "wahr oder falsch",
  "a whole number": "eine ganze Zahl",
  "a number": "eine Zahl",
  text: "Text",
  "a list": "eine Liste",
  "a group of values": "eine Gruppe von Werten",
  "has {count} characters; at most {most} fit": "hat {count} Zeichen; höchstens {most} passen",
  "has {count} items; at most {most} fit": "hat {count} Einträge; höchstens {most} passen",
  "has {count} fields; at most {most} fit": "hat {count} Felder; höchstens {most} passen",
  "of the right form": "in der richtigen Form",
  "must be {wanted}, not {kind}": "muss {wanted} sein, nicht {kind}",
  "has a field “{name}” that does not belong there":
    "hat ein Feld „{name}“, das nicht dorthin gehört",
  "must be {words}": "muss {words} sein",
  "“{value}” is not {wanted}": "„{value}“ ist nicht {wanted}",
  "is out of bounds: it must be between {low} and {high}":
    "liegt außerhalb: erlaubt ist zwischen {low} und {high}",
  "must be {wanted}": "muss sein: {wanted}",
  "must be plain data, not {kind}": "muss aus einfachen Daten bestehen",
  "lacks the field {name}": "hat kein Feld {name}",
  // book/setup_log.py
  "the reference as it was last read": "die Referenz, wie sie zuletzt gemessen wurde",
  "the target of the setup": "das Ziel der Einstellung",
  "the target of its latest reading": "das Ziel ihrer letzten Messung",
  // colorimetry/spectrum.py
  "The spectrum is empty: give at least its wavelengths and values.":
    "Das Spektrum ist leer: gib wenigstens Wellenlängen und Werte an.",
  "The spectrum has {count} wavelengths but {count_2} values; each wavelength needs one value.":
    "Das Spektrum hat {count} Wellenlängen, aber {count_2} Werte; jede Wellenlänge braucht einen Wert.",
  "The spectrum has {count} samples; at most {most_samples} fit.":
    "Das Spektrum hat {count} Werte; höchstens {most_samples} passen.",
  "Wavelength {where} ({nm} nm) does not rise above the one before it ({nm_2} nm); sort them from short to long.":
    "Wellenlänge {where} ({nm} nm) liegt nicht über der vor ihr ({nm_2} nm); sortiere sie von kurz nach lang.",
  "The spectrum covers {nm}–{nm_2} nm; colour needs at least {needed}–{needed_2} nm.":
    "Das Spektrum reicht von {nm} bis {nm_2} nm; Farbe braucht mindestens {needed}–{needed_2} nm.",
  "The samples are up to {np} nm apart; colour needs {widest_step} nm or less.":
    "Die Werte liegen bis zu {np} nm auseinander; Farbe braucht {widest_step} nm oder weniger.",
  "The highest value of the spectrum is {peak}: no meter gives that. Check its numbers.":
    "Der höchste Wert des Spektrums ist {peak}: das liefert kein Messgerät. Prüfe seine Zahlen.",
  "The spectrum holds no light: every value is zero or less.":
    "Das Spektrum enthält kein Licht: jeder Wert ist null oder kleiner.",
  "All of its light lies outside {grid}–{grid_2} nm, where the eye sees.":
    "All sein Licht liegt außerhalb von {grid}–{grid_2} nm, wo das Auge sieht.",
  "The value at {nm} nm is {power}; light cannot be negative.":
    "Der Wert bei {nm} nm ist {power}; Licht kann nicht negativ sein.",
  // data/book.schema.json
  "a kind of thing in small letters, such as light or reading":
    "eine Art in Kleinbuchstaben, etwa light oder reading",
  "a SHA-256 of 64 hexadecimal digits": "eine SHA-256 aus 64 Hexadezimalziffern",
  "the id of the thing above, or null": "die Kennung des Dings darüber, oder nichts",
  "the id of a gel, or null": "die Kennung einer Folie, oder nichts",
  "the id of a light, or null": "die Kennung eines Lichts, oder nichts",
  "the id of the light that the others are a ratio to, or null":
    "die Kennung des Lichts, auf das sich die anderen beziehen, oder nichts",
  "the id of a light, or a reading": "die Kennung eines Lichts, oder eine Messung",
  "an id of letters, digits, - and _": "eine Kennung aus Buchstaben, Ziffern, - und _",
  "a date and time with its zone, such as 2026-11-25T19:42:10+01:00":
    "Datum und Uhrzeit mit Zone, etwa 2026-11-25T19:42:10+01:00",
  "a small JPEG, PNG or WebP image as a data address":
    "ein kleines JPEG-, PNG- oder WebP-Bild als Datenadresse",
  "the name of a field": "der Name eines Felds",
  // desk.py
  "The request is not JSON: {reason}.": "Die Frage ist kein JSON: {reason}.",
  // exposure/solving.py
  "the light in lux, foot-candles or lx·s": "das Licht in Lux, Footcandle oder lx·s",
  "the shutter time, or its angle with the frame rate":
    "die Verschlusszeit, oder ihr Winkel mit Bildrate",
  "the f-number or T-number": "die Blende oder T-Blende",
  "This exposure cannot be solved as it stands.": "Diese Belichtung lässt sich so nicht bestimmen.",
  "Still open: {open}. One figure can be found at a time.":
    "Noch offen: {open}. Eine Größe auf einmal lässt sich bestimmen.",
  "A frame rate is solved from a shutter angle.":
    "Eine Bildrate ergibt sich aus einem Verschlusswinkel.",
  "A flash does not depend on the shutter.": "Ein Blitz hängt nicht vom Verschluss ab.",
  "{Name} is given already: leave it empty for it to be found.":
    "{Name} ist schon angegeben: lass es leer, wenn es gesucht ist.",
  // exposure/stops.py
  "{mark} and 1 tenth": "{mark} und 1 Zehntel",
  "{mark} and {n} tenths": "{mark} und {n} Zehntel",
  "1:{times}, {amount} under": "1:{times}, {amount} darunter",
  "1/{speed} s": "1/{speed} s",
  "no stop": "keine Blende",
  "1:1, level": "1:1, gleich",
  "{times}:1, {amount} over": "{times}:1, {amount} darüber",
  "{time} s": "{time} s",
  // field_names.py
  "the ambient light": "das Umgebungslicht",
  "the place across": "der Ort quer",
  "the place upward": "der Ort in der Höhe",
  "the luminance": "die Leuchtdichte",
  "the dimmer as read": "der Dimmer beim Messen",
  "how far off it may be, in stops": "wie weit es in Blenden danebenliegen darf",
  "the distance in feet": "der Abstand in Fuß",
  "the distance in metres": "der Abstand in Metern",
  "the bare reading": "die Messung ohne Folie",
  "the number of flashes": "die Zahl der Blitze",
  "the CCT": "die CCT",
  "the CCT in mired": "die CCT in Mired",
  "green or magenta in CC": "Grün oder Magenta in CC",
  "green or magenta in cuts": "Grün oder Magenta in Stufen",
  "the f-number of the flash": "die Blende des Blitzes",
  "the ISO of the flash meter": "die ISO des Blitzmessers",
  // requests/forms.py
  "{mired} mired is {cct} K.": "{mired} Mired sind {cct} K.",
  "{Name} goes with a CCT: type that too.": "{Name} gehört zu einer CCT: tippe auch sie ein.",
  "{cc} CC green": "{cc} CC Grün",
  "{cc} CC magenta": "{cc} CC Magenta",
  "{What} is more than any white has, Duv {duv}. Check the number, or type x y.":
    "{What} ist mehr, als irgendein Weiß hat, Duv {duv}. Prüfe die Zahl, oder tippe x y ein.",
  "{What} wanted is taken as Duv {duv}: as far the other way as that gel moves a black body of {cct} K.":
    "{What}, das fehlt, ist als Duv {duv} genommen: so weit andersherum, wie diese Folie einen schwarzen Strahler von {cct} K verschiebt.",
  "{What} in the light is taken as Duv {duv}: as far as that gel moves a black body of {cct} K.":
    "{What} im Licht ist als Duv {duv} genommen: so weit, wie diese Folie einen schwarzen Strahler von {cct} K verschiebt.",
  "{Name}: there is no {cut} cut. Type 1/8, 1/4, 1/2, 3/4 or 1.":
    "{Name}: eine Stufe {cut} gibt es nicht. Tippe 1/8, 1/4, 1/2, 3/4 oder 1.",
  "f/{n} at ISO {iso} would be {exposure} lx·s, which no flash gives. Check both.":
    "f/{n} bei ISO {iso} wären {exposure} lx·s; das gibt kein Blitz. Prüfe beides.",
  "f/{n} at ISO {iso} is taken as {exposure} lx·s, with the meter's C of {constant} lx·s.":
    "f/{n} bei ISO {iso} ist als {exposure} lx·s genommen, mit C = {constant} lx·s des Messgeräts.",
  "the exposure constant": "die Belichtungskonstante",
  "the count": "die Anzahl",
  "the number of cuts": "die Zahl der Zuschnitte",
  "the cuts from a sheet": "die Zuschnitte je Bogen",
  "the date": "das Datum",
  "the time of the day": "die Uhrzeit",
  "the most gels on a light": "die meisten Folien an einem Licht",
  "the dimmer": "der Dimmer",
  "the part of a pulse that is light": "der helle Teil eines Pulses",
  "the Duv": "der Duv",
  "the largest tint in Duv": "der größte Farbstich in Duv",
  "the step of the tint in Duv": "der Schritt des Farbstichs in Duv",
  "the light in lx·s": "das Licht in lx·s",
  "the f-number": "die Blende",
  "the direction": "die Richtung",
  "the direction that the window faces": "die Richtung, nach der das Fenster geht",
  "the filter factor": "der Filterfaktor",
  "the filter in stops": "das Filter in Blenden",
  "the flash": "der Blitz",
  "the frame rate": "die Bildrate",
  "the lowest CCT": "die niedrigste CCT",
  "the gel": "die Folie",
  "the loss of the gel in stops": "der Verlust der Folie in Blenden",
  "the reading with the gel": "die Messung mit Folie",
  "the height in feet": "die Höhe in Fuß",
  "the height in metres": "die Höhe in Metern",
  "the number of the reference light": "die Nummer des Bezugslichts",
  "the height of the horizon in degrees": "die Höhe des Horizonts in Grad",
  "the light in foot-candles": "das Licht in Footcandle",
  "the light in lux": "das Licht in Lux",
  "the ISO": "die ISO",
  "the number of the key light": "die Nummer des Führungslichts",
  "the lamp type": "der Lampentyp",
  "the latitude": "die Breite",
  "the length in feet": "die Länge in Fuß",
  "the length in metres": "die Länge in Metern",
  "the loss of the lens in stops": "der Verlust des Objektivs in Blenden",
  "the pulses of light a second": "die Lichtpulse in der Sekunde",
  "the longitude": "die geografische Länge",
  "the stops to lose": "der gewünschte Verlust in Blenden",
  "the loss in stops": "der Verlust in Blenden",
  "the mains frequency": "die Netzfrequenz",
  "the distance of the reading in feet": "der Abstand der Messung in Fuß",
  "the distance of the reading in metres": "der Abstand der Messung in Metern",
  "the light measured, in foot-candles": "das gemessene Licht in Footcandle",
  "the light measured, in lux": "das gemessene Licht in Lux",
  "the reading at this setting": "die Messung bei dieser Einstellung",
  "the x y that was dialled": "das eingestellte x y",
  "the shift in mired": "die Verschiebung in mired",
  "the modulation": "die Modulation",
  "the most answers": "die Zahl der Antworten",
  "the name": "der Name",
  "the note": "die Notiz",
  "the offset": "der Versatz",
  "the overlap in feet": "die Überlappung in Fuß",
  "the overlap in metres": "die Überlappung in Metern",
  "the panes across": "die Scheiben nebeneinander",
  "the panes down": "die Scheiben übereinander",
  "the reading": "die Messung",
  "the CCT that the shift is meant for": "die CCT, für die die Verschiebung gilt",
  "the setup": "die Einstellung",
  "the number of sheets": "die Zahl der Bögen",
  "the shutter angle": "der Verschlusswinkel",
  "the width of the source in feet": "die Breite der Quelle in Fuß",
  "the width of the source in metres": "die Breite der Quelle in Metern",
  "the spare in percent": "die Reserve in Prozent",
  "the spectrum": "das Spektrum",
  "the step in minutes": "der Schritt in Minuten",
  "the tolerance in colour steps": "die Toleranz in Farbschritten",
  "the stock": "der Bestand",
  "the stops": "die Blenden",
  "the share": "der Anteil",
  "the sum": "die Summe",
  "the T-number": "die T-Blende",
  "the white to match": "das Weiß, zu dem es passen soll",
  "the text": "der Text",
  "the shutter time": "die Verschlusszeit",
  "the highest CCT": "die höchste CCT",
  "the tolerance": "die Toleranz",
  "the trim in feet": "der Beschnitt in Fuß",
  "the trim in metres": "der Beschnitt in Metern",
  "the height in degrees": "die Höhe in Grad",
  "the hours from UTC": "die Stunden zu UTC",
  "the values": "die Werte",
  "the light wanted, in foot-candles": "das gewünschte Licht in Footcandle",
  "the light wanted, in lux": "das gewünschte Licht in Lux",
  "the wavelengths": "die Wellenlängen",
  "the width in feet": "die Breite in Fuß",
  "the width in metres": "die Breite in Metern",
  "Give {one} or {other}, not both.": "Nur eines davon geht: {one} oder {other}.",
  // fields.py
  "between {low} and {high}": "zwischen {low} und {high}",
  "{low} or more": "mindestens {low}",
  "{high} or less": "höchstens {high}",
  "{Name} must be a number, not {kind}.": "{Name} muss eine Zahl sein, nicht {kind}.",
  "{Name} must be a finite number.": "{Name} muss eine endliche Zahl sein.",
  "{Name}: “{typed}” is not a number. Type digits, such as {example}.":
    "{Name}: „{typed}“ ist keine Zahl. Tippe Ziffern, etwa {example}.",
  "{Name}: “{typed}” can be read in two ways. Type {thousands} or {decimal}.":
    "{Name}: „{typed}“ lässt sich auf zwei Arten lesen. Gib {thousands} oder {decimal} ein.",
  "the question": "die Frage",
  "{Name} must be values with their names, not {kind}.":
    "{Name}: nötig sind Werte mit ihren Namen, nicht {kind}.",
  "{Name} is missing.": "{Name} fehlt.",
  "{Name} is {value}; it must be {bounds}.": "{Name} ist {value}; erlaubt ist: {bounds}.",
  "{Name} must be a whole number, not {value}.": "{Name} muss eine ganze Zahl sein, nicht {value}.",
  "{name}, number {n}": "{name}, Nummer {n}",
  "{Name} must be text, not {kind}.": "{Name} muss Text sein, nicht {kind}.",
  "{Name} has {count} characters; at most {most} fit.":
    "{Name} hat {count} Zeichen; höchstens {most} passen.",
  "{Name} “{word}” is not known. Choose: {known}.":
    "{Name} „{word}“ ist nicht bekannt. Zur Wahl stehen: {known}.",
  "{Name} must be a list, not {kind}.": "{Name} muss eine Liste sein, nicht {kind}.",
  "{Name} has {count} entries; at most {most} fit.":
    "{Name} hat {count} Einträge; höchstens {most} passen.",
  "“{name}” is not a field here. Known are: {known}.":
    "„{name}“ ist hier kein Feld. Bekannt sind: {known}.",
  "{Name} must hold names only.": "{Name} darf nur Namen enthalten.",
  // filters/kit.py
  "These gels are nominal: computed from physics under their trade names. Real ones differ by make, batch and age; measure yours and they take over.":
    "Diese Folien sind nominell: aus der Physik berechnet, unter den Namen des Gewerbes. Wirkliche weichen nach Fabrikat, Charge und Alter ab; miss deine, und sie treten an ihre Stelle.",
  // filters/learned.py
  "Learned from a shift, not a spectrum: trust it on lamps like this one.":
    "Aus einer Verschiebung gelernt, nicht aus einem Spektrum: traue ihr an Lampen wie dieser.",
  "The two spectra are not on one scale, so the stops lost are worked out for a film that is clear where it passes most. Give the lux of both to know them.":
    "Die zwei Spektren haben nicht denselben Maßstab; die verlorenen Blenden gelten darum für einen Film, der dort klar ist, wo er am meisten durchlässt. Gib die Lux beider an, um sie zu wissen.",
  "The bare lamp gives enough light at only {share} of 420–680 nm to tell what the gel does. Measure it on a lamp with an even spectrum, such as tungsten or daylight.":
    "Die blanke Lampe gibt nur auf {share} von 420–680 nm genug Licht, um zu sagen, was die Folie tut. Miss sie an einer Lampe mit gleichmäßigem Spektrum, etwa Glühlampe oder Tageslicht.",
  "Where the lamp gives little light the gel is a guess: trust it on lamps like this one, and measure it on tungsten or daylight for others.":
    "Wo die Lampe wenig Licht gibt, ist die Folie geschätzt: traue ihr an Lampen wie dieser, und miss sie für andere an Glühlampe oder Tageslicht.",
  "Without the lux of both readings the stops lost are worked out for a film that is clear where it passes most.":
    "Ohne die Lux beider Messungen gelten die verlorenen Blenden für einen Film, der dort klar ist, wo er am meisten durchlässt.",
  "No gel turns the bare light into the gelled one. Check both readings, and the lamp type.":
    "Keine Folie macht aus dem einen Licht das andere. Prüfe beide Messungen und den Lampentyp.",
  "{name}: the transmittance at {where} nm is {np}; a gel cannot add light. Are the values in percent?":
    "{name}: die Transmission bei {where} nm ist {np}; eine Folie kann kein Licht dazugeben. Sind die Werte in Prozent?",
  "{name}: it passes no light.": "{name}: sie lässt kein Licht durch.",
  "With the gel there is {peak} times the light at {where} nm; a gel cannot add light. Are the two readings swapped, or was the lamp or the meter moved?":
    "Mit der Folie ist bei {where} nm {peak}-mal so viel Licht; eine Folie kann keines dazugeben. Sind die Messungen vertauscht, oder wurde Lampe oder Messgerät bewegt?",
  "No gel of this colour passes as much light as the two readings say; the most it could pass is taken. Was the lamp or the meter moved?":
    "Keine Folie dieser Farbe lässt so viel Licht durch, wie die Messungen sagen; das Meiste, was möglich ist, gilt. Wurde Lampe oder Messgerät bewegt?",
  // interchange/cameras.py
  "What a camera sees is three columns on the same wavelengths, for red, green and blue; this file has no such columns.":
    "Was eine Kamera sieht, sind drei Spalten über denselben Wellenlängen, für Rot, Grün und Blau; diese Datei hat keine solchen drei.",
  "Three columns are headed as red, green and blue. Is it what a camera sees, or three lights?":
    "Drei Spalten sind mit Rot, Grün und Blau überschrieben. Ist es, was eine Kamera sieht, oder sind es drei Lichter?",
  // interchange/cgats.py
  "The file has {count} lines; at most {max_lines} are read.":
    "Die Datei hat {count} Zeilen; höchstens {max_lines} werden gelesen.",
  "The file does not say what was measured. What is it?":
    "Die Datei sagt nicht, was gemessen wurde. Was ist es?",
  "The table is too large: at most {max_columns} fields and {max_cells} values are read.":
    "Die Tabelle ist zu groß: höchstens {max_columns} Felder und {max_cells} Werte werden gelesen.",
  "The data has no END_DATA; the file may have been cut short.":
    "Den Daten fehlt END_DATA; die Datei ist vielleicht abgeschnitten.",
  "BEGIN_DATA comes without fields in BEGIN_DATA_FORMAT.":
    "BEGIN_DATA kommt ohne Felder in BEGIN_DATA_FORMAT.",
  "The CGATS file has no spectral fields, such as SPECTRAL_380, and no XYY_X.":
    "Die CGATS-Datei hat keine Spektralfelder wie SPECTRAL_380 und kein XYY_X.",
  "Expected {width} values, one for each field, but found {count}; the line is left out.":
    "Erwartet sind {width} Werte, einer für jedes Feld, gefunden {count}; die Zeile bleibt weg.",
  "the wavelength": "die Wellenlänge",
  "the value at {number} nm": "der Wert bei {number} nm",
  "{message} It is left out.": "{message} Er bleibt weg.",
  // interchange/contents.py
  transmittance: "Transmission",
  reflectance: "Reflexion",
  "{repeated} wavelengths, such as {first} nm, have several values. Which holds?":
    "{repeated} Wellenlängen, etwa {first} nm, haben mehrere Werte. Welcher gilt?",
  "{stated} nm is not a wavelength of light.": "{stated} nm ist keine Wellenlänge von Licht.",
  "The transmittance at {nm} nm is {values}; a gel cannot add light. Are the values in percent?":
    "Die Transmission bei {nm} nm ist {values}; eine Folie kann kein Licht dazugeben. Sind die Werte in Prozent?",
  "{repeated} wavelengths were repeated.": "{repeated} Wellenlängen kamen mehrfach vor.",
  "At most {max_readings} readings are read from one file.":
    "Aus einer Datei werden höchstens {max_readings} Messungen gelesen.",
  "The wavelengths ran from long to short; they are turned round.":
    "Die Wellenlängen fielen; sie sind umgedreht.",
  "The wavelengths were out of order; they are sorted.":
    "Die Wellenlängen standen durcheinander; sie sind sortiert.",
  "The {kind} of {name} reaches {peak}. Are its values factors (at most 1) or percent?":
    "{name}: die {kind} reicht bis {peak}. Sind die Werte Faktoren (höchstens 1) oder Prozent?",
  "x {xy}, y {xy_2} is not a colour that a light can have.":
    "x {xy}, y {xy_2} ist keine Farbe, die ein Licht haben kann.",
  "{cct_k} K is not a colour temperature that a light can have.":
    "{cct_k} K ist keine Farbtemperatur eines Lichts.",
  "At most {max_spectra} spectra are read from one file.":
    "Aus einer Datei werden höchstens {max_spectra} Spektren gelesen.",
  "{damaged} of its {damaged_2} samples are damaged, too many to do without.":
    "{damaged} seiner {damaged_2} Werte sind beschädigt, zu viele, um ohne sie auszukommen.",
  "There are more faults like these; only the first are listed.":
    "Es gibt mehr solche Fehler; nur die ersten stehen hier.",
  // interchange/cxf.py
  "The {name} does not say at which wavelength it begins; it needs a StartWL.":
    "{name} sagt nicht, bei welcher Wellenlänge es beginnt; erwartet ist StartWL.",
  "The CxF file holds no spectrum and no emissive chromaticity.":
    "Die CxF-Datei enthält kein Spektrum und keine Farbe eines Lichts.",
  "The file does not say how many nm its {count} samples are apart.":
    "Die Datei sagt nicht, wie viele nm ihre {count} Werte auseinander liegen.",
  "The value at {number} nm": "Der Wert bei {number} nm",
  "X, Y and Z add up to nothing.": "X, Y und Z ergeben zusammen nichts.",
  // interchange/dialect.py
  "{separators}, decimal comma": "{separators}, Dezimalkomma",
  tabs: "Tabulatoren",
  semicolons: "Semikolons",
  bars: "senkrechte Striche",
  commas: "Kommas",
  spaces: "Leerzeichen",
  "{separators}, decimal point": "{separators}, Dezimalpunkt",
  // book/given.py
  "“{name}” cannot be left out. Known are: {known}.":
    "„{name}“ lässt sich nicht weglassen. Bekannt sind: {known}.",
  "Things can be left out only when a part of the book is shared.":
    "Nur von einem Teil des Buchs lässt sich etwas weglassen.",
  // interchange/stated.py
  "The file says x {x} y {y}, its spectrum is x {own_x} y {own_y}: that is more than a meter's scatter. The spectrum is used, as gels and metrics are computed on it.":
    "Die Datei sagt x {x} y {y}, ihr Spektrum ist x {own_x} y {own_y}: das ist mehr, als ein Messgerät streut. Es gilt das Spektrum, denn auf ihm werden Folien und Maße gerechnet.",
  "The file says {kelvin} K, Duv {tint}, its spectrum is {cct} K, Duv {duv}: that is more than a meter's scatter. The spectrum is used, as gels and metrics are computed on it.":
    "Die Datei sagt {kelvin} K, Duv {tint}, ihr Spektrum ist {cct} K, Duv {duv}: das ist mehr, als ein Messgerät streut. Es gilt das Spektrum, denn auf ihm werden Folien und Maße gerechnet.",
  "The unit of “{label}” ({unit}) is not known here; it is left out.":
    "Die Einheit von „{label}“ ({unit}) ist hier unbekannt; der Wert bleibt weg.",
  "This is stated once for {n} spectra; it is left out.":
    "Das steht nur einmal für {n} Spektren da; es bleibt weg.",
  "“{label}” cannot be “{text}”; it is left out.":
    "„{label}“ kann nicht „{text}“ sein; die Angabe bleibt weg.",
  "“{label}” has several values ({values}); it is left out.":
    "„{label}“ hat mehrere Werte ({values}); die Angabe bleibt weg.",
  "“{label}” says something else than line {earlier}; both are left out.":
    "„{label}“ sagt etwas anderes als Zeile {earlier}; beide bleiben weg.",
  "“{text}”: is the day first, or the month?": "„{text}“: steht der Tag vorn oder der Monat?",
  // interchange/photons.py
  "The values count photons; each is divided by its wavelength to give power.":
    "Die Werte zählen Photonen; jeder ist durch seine Wellenlänge geteilt, was Leistung ergibt.",
  "The file speaks of photons, but its unit does not settle it. Are its values power or numbers of photons?":
    "Die Datei spricht von Photonen, aber ihre Einheit klärt es nicht. Sind ihre Werte Leistung oder Anzahlen von Photonen?",
  // interchange/readings.py
  "The line has neither x and y nor a colour temperature.":
    "Die Zeile hat weder x und y noch eine Farbtemperatur.",
  "Expected a number for {name} but found “{cell}”.":
    "Erwartet ist eine Zahl für {name}, gefunden „{cell}“.",
  // interchange/recognise.py
  "This XML is a “{name}” document; only IES TM-27 and CxF3 (ISO 17972) are read.":
    "Dieses XML ist ein „{name}“-Dokument; gelesen werden IES TM-27 und CxF3 (ISO 17972).",
  // interchange/safe_xml.py
  "The XML declares a document type or entities, which are not read for safety.":
    "Das XML erklärt einen Dokumenttyp oder Entitäten; die werden der Sicherheit halber nicht gelesen.",
  "The XML is nested deeper than {max_depth} levels.":
    "Das XML ist tiefer als {max_depth} Ebenen verschachtelt.",
  "The XML has more than {max_elements} elements.": "Das XML hat mehr als {max_elements} Elemente.",
  "The XML is broken: {messages}. It may have been cut short; save or send it again.":
    "Das XML ist beschädigt: {messages}. Vielleicht ist es abgeschnitten; speichere oder sende es noch einmal.",
  // interchange/table.py
  "table ({words})": "Tabelle ({words})",
  "The file does not contain the delimiter or decimal chosen.":
    "Die Datei enthält das gewählte Trennzeichen oder Dezimalzeichen nicht.",
  "No spectrum was found. It needs a column or a row of wavelengths, such as 380, 385 … 780 nm ({fewest_samples} or more), with a value for each.":
    "Kein Spektrum gefunden. Erwartet ist eine Spalte oder Zeile mit Wellenlängen, etwa 380, 385 … 780 nm ({fewest_samples} oder mehr), mit je einem Wert.",
  "The numbers can be read in two ways. What is the decimal mark?":
    "Die Zahlen lassen sich auf zwei Arten lesen. Was ist das Dezimalzeichen?",
  "{values} to {values_2}": "{values} bis {values_2}",
  "The line has {count} columns; at most {max_columns} are read.":
    "Die Zeile hat {count} Spalten; höchstens {max_columns} werden gelesen.",
  "At most {max_cells} values are read from one file.":
    "Aus einer Datei werden höchstens {max_cells} Werte gelesen.",
  "The table can be read in two ways: {count} spectra with wavelengths down a column or {count_2} with wavelengths across a row.":
    "Die Tabelle lässt sich auf zwei Arten lesen: {count} Spektren mit Wellenlängen in einer Spalte oder {count_2} mit Wellenlängen in einer Zeile.",
  "The spectrum is given over wavenumber (1/cm); export it over wavelength in nm.":
    "Das Spektrum steht über der Wellenzahl (1/cm); gib es über der Wellenlänge in nm aus.",
  "calls them {said}": "nennt sie {said}",
  "does not say in which unit": "nennt keine Einheit",
  "The wavelengths run from {reach}; the file {claim}.":
    "Die Wellenlängen laufen von {reach}; die Datei {claim}.",
  "The wavelength {value} does not fit between its neighbours; the line is left out.":
    "Die Wellenlänge {value} passt nicht zwischen ihre Nachbarn; die Zeile bleibt weg.",
  "Expected a number at {nm} nm but found “{cell}”; the sample is left out.":
    "Bei {nm} nm ist eine Zahl erwartet, gefunden „{cell}“; der Wert bleibt weg.",
  "Expected a wavelength but found “{cell}”; the line is left out.":
    "Erwartet ist eine Wellenlänge, gefunden „{cell}“; die Zeile bleibt weg.",
  "Column {column} has numbers in only {numbers} of {filled} lines; it is left out.":
    "Spalte {column} hat nur in {numbers} von {filled} Zeilen Zahlen; sie bleibt weg.",
  // interchange/text.py
  "The file has {count} MB; at most {max_bytes} MB are read.":
    "Die Datei hat {count} MB; höchstens {max_bytes} MB werden gelesen.",
  "The file is empty.": "Die Datei ist leer.",
  "This is not a text file; save the spectra as text, CSV or TM-27.":
    "Das ist keine Textdatei; speichere die Spektren als Text, CSV oder TM-27.",
  // interchange/kinds.py
  "This file is {what}; {do}.": "Diese Datei ist {what}; {do}.",
  "a picture": "ein Bild",
  "a film or a sound recording": "ein Film oder eine Tonaufnahme",
  "an archive or a spreadsheet workbook": "ein Archiv oder eine Tabellenmappe",
  "an old spreadsheet workbook": "eine alte Tabellenmappe",
  "a PDF": "ein PDF",
  compressed: "komprimiert",
  "a formatted document": "ein formatiertes Dokument",
  "a web page": "eine Webseite",
  empty: "leer",
  "save the numbers as CSV or text": "speichere die Zahlen als CSV oder Text",
  "save the sheet as CSV": "speichere das Blatt als CSV",
  "unpack it first": "entpacke sie zuerst",
  "save it as plain text": "speichere es als reinen Text",
  "save the data that it shows, not the page":
    "speichere die Daten, die sie zeigt, nicht die Seite",
  "choose another": "wähle eine andere",
  // interchange/recognise.py
  "This is a book or other JSON, not readings or a spectrum: bring it in as a book.":
    "Das ist ein Buch oder anderes JSON, keine Messungen und kein Spektrum: hole es als Buch herein.",
  "This is a link to a book, not readings or a spectrum: bring it in as a book.":
    "Das ist ein Link auf ein Buch, keine Messungen und kein Spektrum: hole ihn als Buch herein.",
  "These are codes of a book, not readings or a spectrum: bring them in as a book.":
    "Das sind Codes eines Buchs, keine Messungen und kein Spektrum: hole sie als Buch herein.",
  // interchange/tm27.py
  "The TM-27 file has no SpectralDistribution, so no spectrum in it.":
    "Die TM-27-Datei hat keine SpectralDistribution, also kein Spektrum.",
  "Absorptance is not a light, gel or surface.":
    "Eine Absorption ist weder Licht noch Folie noch Oberfläche.",
  "The file calls its quantity “{quantity}”. What was measured?":
    "Die Datei nennt ihre Größe „{quantity}“. Was wurde gemessen?",
  "the value at {wavelength} nm": "der Wert bei {wavelength} nm",
  // lights/drift.py
  "nothing to compare": "nichts zu vergleichen",
  "{size} stop brighter": "{size} Blende heller",
  "{size} stops brighter": "{size} Blenden heller",
  "{size} stop darker": "{size} Blende dunkler",
  "{size} stops darker": "{size} Blenden dunkler",
  "{tint} by comparison": "{tint} im Vergleich",
  "same colour": "gleiche Farbe",
  "same amount of light": "gleich viel Licht",
  "{mired} mired warmer": "{mired} mired wärmer",
  "{mired} mired cooler": "{mired} mired kühler",
  // lights/fixing.py
  "{steps} colour steps away: x {x}, y {y}": "{steps} Farbschritte weg: x {x}, y {y}",
  "as warm as the target": "so warm wie das Ziel",
  "as warm as meant": "so warm wie gemeint",
  "{mired} mired too warm": "{mired} mired zu warm",
  "{mired} mired too cool": "{mired} mired zu kühl",
  "{mired} mired warmer than meant": "{mired} mired wärmer als gemeint",
  "{mired} mired cooler than meant": "{mired} mired kühler als gemeint",
  // lights/meant.py
  "Meant {offset} it would lie beyond {low}–{high} K, or too far from white: the white is {white} K.":
    "Gemeint als {offset} läge es außerhalb von {low}–{high} K oder zu weit von Weiß: das Weiß hat {white} K.",
  "No lamp gives this white: say what the light is meant to be as x y.":
    "Keine Lampe gibt dieses Weiß: sag in x y, wie das Licht gemeint ist.",
  "This white has no CCT, so nothing is warmer or cooler beside it: say what the light is meant to be as x y.":
    "Dieses Weiß hat keine CCT, also ist nichts wärmer oder kühler daneben: sag in x y, wie das Licht gemeint ist.",
  "the white through {gels}": "das Weiß durch {gels}",
  "like the reading it is to match": "wie die Messung, der es gleichen soll",
  "x {x} y {y} of its own": "eigenes x {x} y {y}",
  "as found": "wie vorgefunden",
  "as the white": "wie das Weiß",
  "{mired} mired cooler than the white": "{mired} mired kühler als das Weiß",
  "{mired} mired warmer than the white": "{mired} mired wärmer als das Weiß",
  "like {name}": "wie {name}",
  "{kelvin} K of its own": "eigene {kelvin} K",
  "Duv {duv}": "Duv {duv}",
  // lights/stand_in.py
  "not known": "nicht bekannt",
  "tungsten, halogen": "Glühlampe, Halogen",
  "daylight, window": "Tageslicht, Fenster",
  "HMI, metal halide": "HMI, Halogen-Metalldampf",
  "fluorescent tube": "Leuchtstoffröhre",
  "LED, white or bi-colour": "LED, weiß oder zweifarbig",
  "LED, mixed colours": "LED, gemischte Farben",
  plasma: "Plasma",
  "mercury vapour": "Quecksilberdampf",
  sodium: "Natrium",
  "flash, xenon": "Blitz, Xenon",
  "Based on what {names} did before.": "Gerechnet nach dem, was {names} früher zeigte.",
  "this lamp": "diese Lampe",
  "What {name} did before is left out: {why}": "Was {name} früher zeigte, bleibt außen vor: {why}",
  "No spectrum of a lamp reaches x {xy}, y {xy_2}: it is close to a single wavelength. Measure a spectrum to go on.":
    "Kein Lampenspektrum erreicht x {xy}, y {xy_2}: das ist fast eine einzige Wellenlänge. Miss ein Spektrum, um weiterzukommen.",
  // lights/tint.py
  "no tint": "kein Farbstich",
  "add {cc} CC magenta": "{cc} CC Magenta dazu",
  "strongly green": "stark grün",
  "strongly magenta": "stark magenta",
  "clearly green": "deutlich grün",
  "clearly magenta": "deutlich magenta",
  "a touch green": "etwas grün",
  "a touch magenta": "etwas magenta",
  "a hair green": "einen Hauch grün",
  "a hair magenta": "einen Hauch magenta",
  "more than any CC gel can take away": "mehr, als eine CC-Folie wegnehmen kann",
  "no green or magenta needed": "weder Grün noch Magenta nötig",
  "add {cc} CC green": "{cc} CC Grün dazu",
  // lights/tolerance.py
  holds: "passt",
  near: "nahe",
  out: "daneben",
  // rendering/camera.py
  "dark skin": "dunkle Haut",
  "light skin": "helle Haut",
  "blue sky": "Himmelblau",
  foliage: "Laub",
  "blue flower": "blaue Blüte",
  "bluish green": "Blaugrün",
  orange: "Orange",
  "purplish blue": "Purpurblau",
  "moderate red": "mittleres Rot",
  purple: "Purpur",
  "yellow green": "Gelbgrün",
  "orange yellow": "Orangegelb",
  blue: "Blau",
  red: "Rot",
  yellow: "Gelb",
  cyan: "Cyan",
  "No score: the standard camera cannot be balanced for so pure a colour.":
    "Kein Wert: auf eine so reine Farbe lässt sich die Normkamera nicht abgleichen.",
  "Not judged: the standard camera sees nothing of so pure a colour.":
    "Nicht beurteilt: von einer so reinen Farbe sieht die Normkamera nichts.",
  "the standard camera": "die Standardkamera",
  "{camera} cannot be balanced for so pure a colour.":
    "{camera} lässt sich auf eine so reine Farbe nicht abgleichen.",
  "{camera} sees nothing of so pure a colour.": "{camera} sieht von einer so reinen Farbe nichts.",
  // rendering/cri.py
  "CIE 13.3-1995 with the skin sample of JIS Z 8726":
    "CIE 13.3-1995 mit dem Hautmuster aus JIS Z 8726",
  "light greyish red": "helles Graurot",
  "dark greyish yellow": "dunkles Graugelb",
  "strong yellow green": "kräftiges Gelbgrün",
  "moderate yellowish green": "mittleres Gelblichgrün",
  "light bluish green": "helles Blaugrün",
  "light blue": "Hellblau",
  "light violet": "helles Violett",
  "light reddish purple": "helles Rotpurpur",
  "strong red": "kräftiges Rot",
  "strong yellow": "kräftiges Gelb",
  "strong green": "kräftiges Grün",
  "strong blue": "kräftiges Blau",
  "leaf green": "Laubgrün",
  "Japanese skin": "japanische Haut",
  "CIE daylight {cct} K": "CIE-Tageslicht {cct} K",
  "black body {cct} K": "schwarzer Strahler {cct} K",
  // rendering/metamerism.py
  "CIE 1931 2°, each light's own white adapted to":
    "CIE 1931 2°, an das Weiß jedes Lichts angepasst",
  "TLCI-2012 standard camera and BT.709 display":
    "Normkamera von TLCI-2012 und Bildschirm nach BT.709",
  "CIEDE2000 (ISO/CIE 11664-6:2014) on the chart of EBU Tech 3355 (TLCI-2012), 2013":
    "CIEDE2000 (ISO/CIE 11664-6:2014) auf der Tafel von EBU Tech 3355 (TLCI-2012), 2013",
  "Not compared: one of the lights is too pure a colour to adapt to.":
    "Nicht verglichen: eines der Lichter ist zu rein, um sich daran anzupassen.",
  // rendering/reference.py
  "Not rated: the light is too far from white (Duv {duv}) to have a reference light to be judged against.":
    "Nicht bewertet: das Licht ist zu weit von Weiß (Duv {duv}), um ein Referenzlicht zu haben.",
  "Not rated: reference lights reach from 1000 to {hottest_k} K, and this light lies outside.":
    "Nicht bewertet: Referenzlichter reichen von 1000 bis {hottest_k} K, und dieses Licht liegt außerhalb.",
  // rendering/seen.py
  "No picture: the camera sees nothing of so pure a colour.":
    "Kein Bild: von einer so reinen Farbe sieht die Kamera nichts.",
  // rendering/ssi.py
  "none (spectra are compared)": "keiner (Spektren werden verglichen)",
  "{edition}; compared from {low} to {high} nm, where both spectra reach; filled up to 375–675 nm it is {zero} with zeros, {held} with the last value held":
    "{edition}; verglichen von {low} bis {high} nm, so weit beide Spektren reichen; auf 375–675 nm aufgefüllt sind es {zero} mit Nullen, {held} mit dem letzten Wert weitergeführt",
  "{edition}; compared from {low} to {high} nm, where both spectra reach; filling up to 375–675 nm gives the same":
    "{edition}; verglichen von {low} bis {high} nm, so weit beide Spektren reichen; auf 375–675 nm aufgefüllt ergibt sich dasselbe",
  "CIE illuminant D55": "CIE-Lichtart D55",
  "Not rated: there is no light between 375 and 675 nm to compare.":
    "Nicht bewertet: zwischen 375 und 675 nm gibt es kein Licht zu vergleichen.",
  // rendering/tlci.py
  "{share} black body {low} K and {share_2} daylight {high} K":
    "{share} schwarzer Strahler {low} K und {share_2} Tageslicht {high} K",
  "daylight {cct} K": "Tageslicht {cct} K",
  "No score: there is no light between 380 and 760 nm.":
    "Kein Wert: zwischen 380 und 760 nm gibt es kein Licht.",
  "No score: no patch of the chart stays within what the standard camera can hold.":
    "Kein Wert: kein Feld der Tafel bleibt in dem, was die Normkamera fasst.",
  // rendering/tm30.py
  "CIE 1964 10° (colour temperature: CIE 1931 2°)": "CIE 1964 10° (Farbtemperatur: CIE 1931 2°)",
  "CIE 224:2017, the same in ANSI/IES TM-30-20": "CIE 224:2017, gleich in ANSI/IES TM-30-20",
  "{share} black body and {share_2} CIE daylight at {cct} K":
    "{share} schwarzer Strahler und {share_2} CIE-Tageslicht bei {cct} K",
  // rendering/verdict.py
  "R{number} {value}": "R{number} {value}",
  "SSI {value}": "SSI {value}",
  "Duv {signed}": "Duv {signed}",
  "Rcs,h1 {red} %": "Rcs,h1 {red} %",
  "TLCI {qa}": "TLCI {qa}",
  "very wrong": "ganz falsch",
  poor: "schwach",
  low: "niedrig",
  "A coloured light, not a white one: colour rendering says little about it":
    "Ein farbiges Licht, kein weißes: Farbwiedergabe sagt wenig darüber",
  "Deep reds go dull: skin will look flat": "Tiefes Rot wird stumpf: Haut wirkt flach",
  warm: "warm",
  cool: "kühl",
  "Deep reds lose strength: watch lips and skin":
    "Tiefes Rot verliert Kraft: achte auf Lippen und Haut",
  "Reds lose a lot of chroma: faces go pale and grey":
    "Rot verliert viel Buntheit: Gesichter werden blass und grau",
  "The spectrum is unlike its reference ({reference}): cameras and film stocks may disagree about it.":
    "Das Spektrum gleicht seiner Referenz nicht ({reference}): Kameras und Filme können sich darüber uneins sein.",
  "Nothing stands out: colours stay as they are.":
    "Nichts fällt auf: Farben bleiben, wie sie sind.",
  "Colours that come out wrong: {named}.": "Farben, die falsch kommen: {named}.",
  "The light is too far from its reference white for CRI to be trusted: take Ra and R1–R15 as doubtful.":
    "Das Licht ist zu weit von seinem Referenzweiß, um CRI zu trauen: nimm Ra und R1–R15 als zweifelhaft.",
  "ΔC {distance} in u v, tolerance {tolerance_uv} (CIE 13.3-1995)":
    "ΔC {distance} in u v, Toleranz {tolerance_uv} (CIE 13.3-1995)",
  "Reds lose some chroma: faces a little pale":
    "Rot verliert etwas Buntheit: Gesichter ein wenig blass",
  "Colours go pale overall (Rg {rg}).": "Farben werden insgesamt blass (Rg {rg}).",
  "Rg {rg}": "Rg {rg}",
  "Left out of TLCI, since the standard camera cannot hold them: {listing}.":
    "Aus TLCI ausgelassen, weil die Normkamera sie nicht fasst: {listing}.",
  "{count} of 18 patches": "{count} von 18 Feldern",
  "The spectra are alike: they mix unseen.":
    "Die Spektren gleichen sich: sie mischen sich ungesehen.",
  "Nothing stands out: they show colours alike.": "Nichts fällt auf: sie zeigen Farben gleich.",
  "A metameric pair: the lights agree in x y, but colours do not. The eye sees {patches} differ most.":
    "Ein metameres Paar: die Lichter stimmen in x y überein, die Farben nicht. Am meisten sieht das Auge den Unterschied bei {patches}.",
  "ΔE00 {most} at {steps} colour steps": "ΔE00 {most} bei {steps} Farbschritten",
  "Skin will look plainly different.": "Haut sieht deutlich anders aus.",
  "skin ΔE00 {skin}": "Haut ΔE00 {skin}",
  "The eye sees them alike, a camera does not.": "Das Auge sieht sie gleich, eine Kamera nicht.",
  "ΔE00 eye {most}, camera {camera_most}": "ΔE00 Auge {most}, Kamera {camera_most}",
  "On one camera balance the second light goes {shift_words}, though the eye sees nearly the same white.":
    "Bei einem Abgleich der Kamera wird das zweite Licht {shift_words}, obwohl das Auge fast dasselbe Weiß sieht.",
  "grey card ΔE00 camera {grey}, eye {eye_grey}": "Graukarte ΔE00 Kamera {grey}, Auge {eye_grey}",
  "The eye will see {tint} ({seen}).": "Das Auge wird {tint} sehen ({seen}).",
  "{Name} shifts in colour ({index}).": "{Name} verschiebt sich in der Farbe ({index}).",
  "Reds are pushed: faces go ruddy": "Rot ist überhöht: Gesichter werden rötlich",
  "Colours come out too vivid (Rg {rg}).": "Farben kommen zu kräftig (Rg {rg}).",
  "Fine for a camera balanced to it (TLCI {qa}), but the eye will see {tint}, and so will a camera balanced elsewhere.":
    "Gut für eine darauf abgeglichene Kamera (TLCI {qa}), aber das Auge wird {tint} sehen, und eine anders abgeglichene Kamera auch.",
  "Fine for camera: no correction needed ({because}).":
    "Gut für die Kamera: keine Korrektur nötig ({because}).",
  "Hard to grade back ({because}): worst are {worst}.":
    "Im Grading schwer zurückzuholen ({because}): am schlimmsten sind {worst}.",
  "Needs a grade ({because}): worst are {worst}.":
    "Braucht Grading ({because}): am schlimmsten sind {worst}.",
  "Fine for the eye (Ra {ra}), but the camera will see it differently.":
    "Gut für das Auge (Ra {ra}), aber die Kamera sieht es anders.",
  "The spectra are unlike: a match by x y will not hold for every camera.":
    "Die Spektren gleichen sich nicht: ein Abgleich nach x y hält nicht für jede Kamera.",
  "Skin will look a little different side by side.": "Haut sieht nebeneinander etwas anders aus.",
  "Ra {ra}": "Ra {ra}",
  // replies/book.py
  "{count} setups": "{count} Einstellungen",
  "an empty book": "ein leeres Buch",
  "{count} productions": "{count} Produktionen",
  "{count} locations": "{count} Motive",
  // lights/fixing.py
  "To know better, learn {gel} once: two readings of one lamp.":
    "Genauer geht es, wenn du {gel} einmal einmisst: zwei Messungen an einer Lampe.",
  "To know better, type the Ra that the meter shows, under More to log.":
    "Genauer geht es mit dem Ra, das das Messgerät zeigt: unter „Mehr notieren“ eintippen.",
  "To know better, load a spectrum of this light.":
    "Genauer geht es mit einem Spektrum dieses Lichts.",
  "how far gels vary": "die Streuung der Folien",
  "No lamp of this type is known that reads this colour and has {figures}. Check the figures and the lamp type.":
    "Keine Lampe dieses Typs hat bei dieser Farbe {figures}. Prüfe die Zahlen und den Lampentyp.",
  // replies/dim.py
  "no CCT": "keine CCT",
  "dim to {percent} % of its light, {stops}; then {then}":
    "auf {percent} % des Lichts dimmen, {stops}; dann {then}",
  "{kelvin} K": "{kelvin} K",
  "leave it at full: {then}": "voll lassen: {then}",
  // replies/each.py
  "{n} light is left out, what was typed of it cannot be used: {names}.":
    "{n} Licht bleibt außen vor, seine Angaben sind nicht brauchbar: {names}.",
  "{n} lights are left out, what was typed of them cannot be used: {names}.":
    "{n} Lichter bleiben außen vor, ihre Angaben sind nicht brauchbar: {names}.",
  // replies/fix.py
  "These gels eat {stops_lost} stops; a lamp of the right colour may be the better tool.":
    "Diese Folien schlucken {stops_lost} Blenden; eine Lampe der richtigen Farbe ist vielleicht das bessere Werkzeug.",
  // replies/rendering.py
  "The samples are {step} nm apart; the published metrics ask for 5 nm or finer. They were interpolated: take the numbers as approximate.":
    "Die Werte liegen {step} nm auseinander; die Normen verlangen 5 nm oder feiner. Sie sind interpoliert: nimm die Zahlen als ungefähr.",
  // replies/sweep.py
  "Even: every point is within {within}.": "Gleichmäßig: jeder Punkt liegt innerhalb von {within}.",
  "just over {amount}": "knapp über {amount}",
  level: "gleich",
  "{Places}, and {more} more are off by over {within}.":
    "{Places}, und {more} weitere liegen um mehr als {within} daneben.",
  "{Places}; nothing is within {within}.": "{Places}; nichts liegt innerhalb von {within}.",
  "{Places}; the rest is within {within}.": "{Places}; der Rest liegt innerhalb von {within}.",
  "{amount} over": "{amount} zu hell",
  "{amount} under": "{amount} zu dunkel",
  "{place} is {off}": "{place} {off}",
  // requests/sweep.py
  "Give one amount of light, not several.": "Gib eine Lichtmenge an, nicht mehrere.",
  "Point {n} is in {unit}, the first in {other}: read them all in one unit.":
    "Punkt {n} steht in {unit}, der erste in {other}: miss alle in einer Einheit.",
  "The aim is a level in lux for readings in lux; else choose a point or the mean.":
    "Das Ziel ist ein Wert in Lux, wenn in Lux gemessen wird; sonst wähle einen Punkt oder das Mittel.",
  "There are no readings of this surface yet.": "Von dieser Fläche gibt es noch keine Messung.",
  "There is no reading at that point yet.": "An diesem Punkt gibt es noch keine Messung.",
  "Type how much light there is.": "Tippe ein, wie viel Licht da ist.",
  // sweep/evenness.py
  "lower left": "unten links",
  bottom: "unten",
  "lower right": "unten rechts",
  "left side": "links",
  middle: "Mitte",
  "right side": "rechts",
  "upper left": "oben links",
  top: "oben",
  "upper right": "oben rechts",
  // replies/units.py
  "{width} × {along} m": "{width} × {along} m",
  "{length} m": "{length} m",
  // requests/camera.py
  "{Name}: “{typed}” is not a shutter time.": "{Name}: „{typed}“ ist keine Verschlusszeit.",
  // requests/file.py
  "not recognised": "nicht erkannt",
  "The file did not arrive whole; choose it again.":
    "Die Datei kam nicht ganz an; wähle sie noch einmal.",
  // requests/judge.py
  "A camera is given: say that the camera judges, or leave it out.":
    "Es ist eine Kamera angegeben: sag, dass die Kamera urteilt, oder lass sie weg.",
  // requests/kit.py
  "The gel needs a name.": "Die Folie braucht einen Namen.",
  "“{name}” has {count} wavelengths and {count_2} transmittances; it needs two or more, one for each wavelength.":
    "„{name}“ hat {count} Wellenlängen und {count_2} Transmissionen; es braucht mindestens zwei, eine für jede Wellenlänge.",
  "The wavelengths of “{name}” must rise.": "Die Wellenlängen von „{name}“ müssen steigen.",
  "“{name}” covers {nm}–{nm_2} nm; a gel needs at least 420–680 nm.":
    "„{name}“ reicht von {nm} bis {nm_2} nm; eine Folie braucht mindestens 420–680 nm.",
  "The transmittances of “{name}” must lie between 0 and 1 (percent divided by 100).":
    "Die Transmissionen von „{name}“ müssen zwischen 0 und 1 liegen (Prozent durch 100).",
  "There is no gel named “{name}” in the kit. Pick one from Kit, or add it there.":
    "Im Koffer ist keine Folie namens „{name}“. Wähle eine aus, oder füge sie dort hinzu.",
  // requests/meant.py
  "Say one thing that the light is meant to be: as the white, warmer or cooler than it, as through gels, a colour of its own, like another light, or as found.":
    "Sag eines, wie das Licht gemeint ist: wie das Weiß, wärmer oder kühler, wie durch Folien, mit eigener Farbe, wie ein anderes Licht oder wie vorgefunden.",
  "A Duv goes with warmer, cooler or a CCT: leave it out here.":
    "Ein Duv gehört zu wärmer, kühler oder einer CCT: lass ihn hier weg.",
  "the Duv beside the white": "der Duv neben dem Weiß",
  "There is no other light in this question: give the reading itself.":
    "In dieser Frage gibt es kein anderes Licht: gib die Messung selbst an.",
  "{names} are meant like each other in a circle: say of one of them what it is meant to be.":
    "{names} sind im Kreis wie einander gemeint: sag von einem davon, wie es gemeint ist.",
  "the offset in mired": "der Abstand in mired",
  "{n} gels are named; at most {most} fit.": "{n} Folien sind genannt; höchstens {most} passen.",
  "{name} is meant like itself: choose another light.":
    "{name} ist wie es selbst gemeint: wähle ein anderes Licht.",
  // requests/reach.py
  "The range ends at {to_k} K, below its start at {from_k} K.":
    "Der Bereich endet bei {to_k} K, unter seinem Anfang bei {from_k} K.",
  "A gamut needs one colour or more.": "Ein Farbraum braucht mindestens eine Farbe.",
  "Give a gamut, or {name}, not both.": "Nur eines davon geht: ein Farbraum oder {name}.",
  // requests/reading.py
  "x y": "x y",
  CCT: "CCT",
  spectrum: "Spektrum",
  lux: "Lux",
  "foot-candles": "Footcandle",
  lux·s: "lx·s",
  "x + y is {x}; it cannot exceed 1. Check both for a typo.":
    "x + y ist {x}; mehr als 1 geht nicht. Prüfe beide auf Tippfehler.",
  "No light has x {x}, y {y}: it lies outside the colours the eye can see. Check both, and that these are x y and not u′ v′.":
    "Kein Licht hat x {x}, y {y}: das liegt außerhalb der sichtbaren Farben. Prüfe beide, und dass es x y sind und nicht u′ v′.",
  "x y with three decimals leaves the CCT open by some 14 K; type four if the meter shows them.":
    "x y mit drei Stellen lässt die CCT um etwa 14 K offen; tippe vier, wenn das Messgerät sie zeigt.",
  "A CCT of {kelvin} K is outside {low}–{high} K.":
    "Eine CCT von {kelvin} K liegt außerhalb von {low}–{high} K.",
  "A CCT of {kelvin} K is outside {low}–{high} K. Did you mean {slip} K?":
    "Eine CCT von {kelvin} K liegt außerhalb von {low}–{high} K. Waren {slip} K gemeint?",
  "No green-magenta given, so Duv 0 is assumed; a CCT alone cannot tell green from magenta. Type the Duv, or x y.":
    "Kein Grün-Magenta angegeben, also gilt Duv 0; eine CCT allein unterscheidet Grün nicht von Magenta. Tippe den Duv oder x y.",
  "A Duv of {duv} is beyond ±{largest_duv}, where a CCT has no meaning. Type x y instead; if the meter shows CC, choose CC in Kit.":
    "Ein Duv von {duv} liegt jenseits von ±{largest_duv}, wo eine CCT nichts bedeutet. Tippe stattdessen x y; zeigt das Messgerät CC, wähle CC im Koffer.",
  "Give {one} or {other}, not both: they are one amount.":
    "Gib {one} oder {other} an, nicht beides: es ist dieselbe Menge.",
  "{Name} is {amount}; a light that can be read gives more than zero.":
    "{Name} ist {amount}; ein Licht, das sich messen lässt, gibt mehr als null.",
  "{lux} lx is more than direct sun at noon gives; check the number and its unit.":
    "{lux} lx ist mehr, als die Mittagssonne gibt; prüfe Zahl und Einheit.",
  "This light is warmer or cooler than any white: no CCT can be given for it.":
    "Dieses Licht ist wärmer oder kühler als jedes Weiß: eine CCT lässt sich nicht angeben.",
  "So far from the black-body line (Duv {duv}) a light has no CCT; it is a colour, and gel for white will not do.":
    "So weit von der Linie des schwarzen Strahlers (Duv {duv}) hat ein Licht keine CCT; es ist eine Farbe, und Folie für Weiß hilft nicht.",
  "Duv {duv} is far off the black-body line; the CCT says little there, trust x y and your eyes.":
    "Duv {duv} ist weit von der Linie des schwarzen Strahlers; die CCT sagt dort wenig, traue x y und deinen Augen.",
  "Type x and y, or a CCT with its Duv, or load a spectrum.":
    "Tippe x und y oder eine CCT mit Duv, oder lade ein Spektrum.",
  "Both {one} and {other} are given; one of them must be left out.":
    "{one} und {other} sind beide angegeben; eines davon muss wegbleiben.",
  "Colour rendering needs a spectrum: x y or a CCT alone cannot tell how a light shows colours. Load the spectrum file that the meter saved, or paste it.":
    "Farbwiedergabe braucht ein Spektrum: x y oder eine CCT allein sagt nicht, wie ein Licht Farben zeigt. Lade die Datei, die das Messgerät gespeichert hat, oder setze sie ein.",
  "{name} is missing: {other} alone says no colour.":
    "{name} fehlt: {other} allein sagt keine Farbe.",
  "The spectrum covers {low}–{high} nm; towards 380 and 780 nm its last values are carried on.":
    "Das Spektrum reicht von {low} bis {high} nm; bis 380 und 780 nm werden die letzten Werte fortgeführt.",
  "the target CCT": "die CCT des Ziels",
  "the target Duv": "der Duv des Ziels",
  // requests/sensitivities.py
  "The camera needs a name.": "Die Kamera braucht einen Namen.",
  "What a camera sees must be known from {low} to {high} nm at least.":
    "Was eine Kamera sieht, muss mindestens von {low} bis {high} nm bekannt sein.",
  "Two channels of “{name}” see the same, so it tells no colours apart; check the columns.":
    "Zwei Kanäle von „{name}“ sehen dasselbe, sie unterscheidet so keine Farben; prüfe die Spalten.",
  "{Channel} has {count} values for {count_2} wavelengths; each wavelength needs one.":
    "{Channel} hat {count} Werte für {count_2} Wellenlängen; jede Wellenlänge braucht einen.",
  "{Channel} sees nothing at all.": "{Channel} sieht gar nichts.",
  "{Channel} is below zero at {nm} nm; give what the sensor sees, not what a matrix made of it.":
    "{Channel} liegt bei {nm} nm unter null; gib an, was der Sensor sieht, nicht was eine Matrix daraus gemacht hat.",
  "the red channel": "der rote Kanal",
  "the green channel": "der grüne Kanal",
  "the blue channel": "der blaue Kanal",
  // said.py
  "{most} and {last}": "{most} und {last}",
  "{most} or {last}": "{most} oder {last}",
  // scouting/sun.py
  north: "Norden",
  "north-east": "Nordosten",
  east: "Osten",
  "south-east": "Südosten",
  south: "Süden",
  "south-west": "Südwesten",
  west: "Westen",
  "north-west": "Nordwesten",
  // requests/lit.py
  "The reference cannot be used to match the others: {why}":
    "An der Referenz lassen sich die anderen nicht messen: {why}",
  "It is meant like {other}, which cannot be used.":
    "Es ist wie {other} gemeint, und das ist nicht brauchbar.",
  // requests/meant.py
  // replies/dim.py
  // asks/agree.py
  // asks/display.py
  "No x y, CCT or lux could be read. Hold the phone straight above the display, closer, and so that no lamp shows in it.":
    "Weder x y noch CCT oder Lux waren zu lesen. Halte das Telefon gerade über die Anzeige, näher und so, dass sich keine Lampe darin spiegelt.",
  "A box is left, top, right and bottom.": "Ein Rahmen ist links, oben, rechts und unten.",
  "{first} Nothing checks {figures}: compare.": "{first} Nichts prüft {figures}: vergleichen.",
  "Nothing on the display checks these numbers: compare each of them.":
    "Nichts auf der Anzeige prüft diese Zahlen: jede vergleichen.",
  "x y and CCT contradict each other: a digit was misread. Compare.":
    "x y und CCT widersprechen sich: eine Ziffer wurde falsch gelesen. Vergleichen.",
  "{figures} agree as far as so few digits can tell: compare them.":
    "{figures} stimmen überein, soweit so wenige Stellen es zeigen: vergleichen.",
  "{figures} nearly agree ({cct} K apart): compare the last digits.":
    "{figures} passen fast zusammen ({cct} K auseinander): die letzten Ziffern vergleichen.",
  "{figures} agree.": "{figures} passen zusammen.",
  "{name} looked like {read}; with {text} {figures} agree. Compare it.":
    "{name} sah aus wie {read}; mit {text} passen {figures} zusammen. Vergleichen.",
};
