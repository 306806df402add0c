/**
 * What the kernel says, in German: each of its forms with the same named places. A test holds them
 * against the kernel's source. A form without words needs no German.
 *
 * @type {Record<string, string>}
 */
export default {
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
  "The spectrum holds no light: every value is zero or less.":
    "Das Spektrum enthält kein Licht: jeder Wert ist null oder kleiner.",
  "All of its light lies outside {grid}–{grid_2} nm, where the eye sees.":
    "All sein Licht liegt außerhalb von {grid}–{grid_2} nm, wo das Auge sieht.",
  "The value at {nm} nm is {power}; light cannot be negative.":
    "Der Wert bei {nm} nm ist {power}; Licht kann nicht negativ sein.",
  // exposure/stops.py
  "{mark} and 1 tenth": "{mark} und 1 Zehntel",
  "{mark} and {n} tenths": "{mark} und {n} Zehntel",
  "{amount} stops": "{amount} Blenden",
  "1:{times}, {amount} under": "1:{times}, {amount} darunter",
  "1/{speed} s": "1/{speed} s",
  "no stop": "keine Blende",
  "{amount} stop": "{amount} Blende",
  "1:1, level": "1:1, gleich",
  "{times}:1, {amount} over": "{times}:1, {amount} darüber",
  "{time} s": "{time} s",
  // field_names.py
  "The ambient light": "Das Umgebungslicht",
  "The distance in feet": "Der Abstand in Fuß",
  "The distance in metres": "Der Abstand in Metern",
  "The bare reading": "Die Messung ohne Folie",
  "The number of flashes": "Die Zahl der Blitze",
  "The CCT": "Die CCT",
  "The exposure constant": "Die Belichtungskonstante",
  "The count": "Die Anzahl",
  "The number of cuts": "Die Zahl der Zuschnitte",
  "The cuts from a sheet": "Die Zuschnitte je Bogen",
  "The date": "Das Datum",
  "The most gels on a light": "Die meisten Folien an einem Licht",
  "The dimmer": "Der Dimmer",
  "The part of a pulse that is light": "Der helle Teil eines Pulses",
  "The Duv": "Der Duv",
  "The largest tint in Duv": "Der größte Farbstich in Duv",
  "The step of the tint in Duv": "Der Schritt des Farbstichs in Duv",
  "The light in lx·s": "Das Licht in lx·s",
  "The f-number": "Die Blende",
  "The direction that the window faces": "Die Richtung, nach der das Fenster geht",
  "The filter factor": "Der Filterfaktor",
  "The filter in stops": "Das Filter in Blenden",
  "The first light": "Das erste Licht",
  "The flash": "Der Blitz",
  "The frame rate": "Die Bildrate",
  "The lowest CCT": "Die niedrigste CCT",
  "The gel": "Die Folie",
  "The loss of the gel in stops": "Der Verlust der Folie in Blenden",
  "The reading with the gel": "Die Messung mit Folie",
  "The height in feet": "Die Höhe in Fuß",
  "The height in metres": "Die Höhe in Metern",
  "The number of the reference light": "Die Nummer des Bezugslichts",
  "The height of the horizon in degrees": "Die Höhe des Horizonts in Grad",
  "The light in foot-candles": "Das Licht in Footcandle",
  "The light in lux": "Das Licht in Lux",
  "The ISO": "Die ISO",
  "The number of the key light": "Die Nummer des Führungslichts",
  "The kind of lamp": "Die Art der Lampe",
  "The latitude": "Die Breite",
  "The length in feet": "Die Länge in Fuß",
  "The length in metres": "Die Länge in Metern",
  "The loss of the lens in stops": "Der Verlust des Objektivs in Blenden",
  "The pulses of light a second": "Die Lichtpulse in der Sekunde",
  "The longitude": "Die geografische Länge",
  "The stops to lose": "Der gewünschte Verlust in Blenden",
  "The loss in stops": "Der Verlust in Blenden",
  "The mains frequency": "Die Netzfrequenz",
  "The distance of the reading in feet": "Der Abstand der Messung in Fuß",
  "The distance of the reading in metres": "Der Abstand der Messung in Metern",
  "The light measured, in foot-candles": "Das gemessene Licht in Footcandle",
  "The light measured, in lux": "Das gemessene Licht in Lux",
  "The shift in mired": "Die Verschiebung in mired",
  "The modulation": "Die Modulation",
  "The most answers": "Die Zahl der Antworten",
  "The name": "Der Name",
  "The note": "Die Notiz",
  "The offset": "Der Versatz",
  "The overlap in feet": "Die Überlappung in Fuß",
  "The overlap in metres": "Die Überlappung in Metern",
  "The panes across": "Die Scheiben nebeneinander",
  "The panes down": "Die Scheiben übereinander",
  "The reading": "Die Messung",
  "The CCT that the shift is meant for": "Die CCT, für die die Verschiebung gilt",
  "The second light": "Das zweite Licht",
  "The setup": "Die Einstellung",
  "The share in foot-candles": "Der Anteil in Footcandle",
  "The share in lux": "Der Anteil in Lux",
  "The number of sheets": "Die Zahl der Bögen",
  "The shutter angle": "Der Verschlusswinkel",
  "The width of the source in feet": "Die Breite der Quelle in Fuß",
  "The width of the source in metres": "Die Breite der Quelle in Metern",
  "The spare in percent": "Die Reserve in Prozent",
  "The spectrum": "Das Spektrum",
  "The step in K": "Der Schritt in K",
  "The step in minutes": "Der Schritt in Minuten",
  "The step in mired": "Der Schritt in mired",
  "The tolerance in steps": "Die Toleranz in Schritten",
  "The stock": "Der Bestand",
  "The stops": "Die Blenden",
  "The sum": "Die Summe",
  "The T-number": "Die T-Blende",
  "The white to match": "Das Weiß, zu dem es passen soll",
  "The text": "Der Text",
  "The shutter time": "Die Verschlusszeit",
  "The highest CCT": "Die höchste CCT",
  "The tolerance": "Die Toleranz",
  "The trim in feet": "Der Beschnitt in Fuß",
  "The trim in metres": "Der Beschnitt in Metern",
  "The hours from UTC": "Die Stunden zu UTC",
  "The values": "Die Werte",
  "The light wanted, in foot-candles": "Das gewünschte Licht in Footcandle",
  "The light wanted, in lux": "Das gewünschte Licht in Lux",
  "The wavelengths": "Die Wellenlängen",
  "The width in feet": "Die Breite in Fuß",
  "The width in metres": "Die Breite in Metern",
  // fields.py
  "between {low} and {high}": "zwischen {low} und {high}",
  nothing: "nichts",
  "true or false": "wahr oder falsch",
  text: "Text",
  "a number": "eine Zahl",
  "a list": "eine Liste",
  "a group of values": "eine Gruppe von Werten",
  "{low} or more": "mindestens {low}",
  "{high} or less": "höchstens {high}",
  "{name} must be a number, not {kind}.": "{name} muss eine Zahl sein, nicht {kind}.",
  "{name} must be a finite number.": "{name} muss eine endliche Zahl sein.",
  "{name}: “{typed}” is not a number. Type digits, such as {example}.":
    "{name}: „{typed}“ ist keine Zahl. Tippe Ziffern, etwa {example}.",
  "The question": "Die Frage",
  "{name} must be values with their names, not {kind}.":
    "{name}: nötig sind Werte mit ihren Namen, nicht {kind}.",
  "{name} is missing.": "{name} fehlt.",
  "{name} is {value}; it must be {bounds}.": "{name} ist {value}; erlaubt ist: {bounds}.",
  "{name} must be a whole number, not {value}.": "{name} muss eine ganze Zahl sein, nicht {value}.",
  "{name}, number {n}": "{name}, Nummer {n}",
  "{name} must be text, not {kind}.": "{name} muss Text sein, nicht {kind}.",
  "{name} has {count} characters; at most {most} fit.":
    "{name} hat {count} Zeichen; höchstens {most} passen.",
  "{name} “{word}” is not known. Choose: {known}.":
    "{name} „{word}“ ist nicht bekannt. Zur Wahl stehen: {known}.",
  "{name} must be a list, not {kind}.": "{name} muss eine Liste sein, nicht {kind}.",
  "{name} has {count} entries; at most {most} fit.":
    "{name} hat {count} Einträge; höchstens {most} passen.",
  "“{name}” is not a field here. Known are: {known}.":
    "„{name}“ ist hier kein Feld. Bekannt sind: {known}.",
  "{name} must hold names only.": "{name} darf nur Namen enthalten.",
  // filters/kit.py
  "These gels are nominal: computed from physics under their trade names. Real ones differ by make, batch and age; measure yours and they take over.":
    "Diese Folien sind nominell: aus der Physik berechnet, unter den Namen des Gewerbes. Wirkliche weichen nach Fabrikat, Charge und Alter ab; miss deine, und sie treten an ihre Stelle.",
  // filters/learned.py
  "Learned from a shift, not a spectrum: trust it on lamps like this one.":
    "Aus einer Verschiebung gelernt, nicht aus einem Spektrum: traue ihr an Lampen wie dieser.",
  "The two spectra are not on one scale, so the stops lost are reckoned from a film that is clear where it passes most. Give the lux of both to know them.":
    "Die zwei Spektren haben nicht denselben Maßstab; die verlorenen Blenden gelten darum für einen Film, der dort klar ist, wo er am meisten durchlässt. Gib die Lux beider an, um sie zu wissen.",
  "The bare lamp gives enough light at only {share} of 420–680 nm to tell what the gel does. Measure it on a lamp with an even spectrum, such as tungsten or daylight.":
    "Die blanke Lampe gibt nur auf {share} von 420–680 nm genug Licht, um zu sagen, was die Folie tut. Miss sie an einer Lampe mit gleichmäßigem Spektrum, etwa Glühlampe oder Tageslicht.",
  "Where the lamp gives little light the gel is a guess: trust it on lamps like this one, and measure it on tungsten or daylight for others.":
    "Wo die Lampe wenig Licht gibt, ist die Folie geschätzt: traue ihr an Lampen wie dieser, und miss sie für andere an Glühlampe oder Tageslicht.",
  "Without the lux of both readings the stops lost are reckoned from a film that is clear where it passes most.":
    "Ohne die Lux beider Messungen gelten die verlorenen Blenden für einen Film, der dort klar ist, wo er am meisten durchlässt.",
  "No gel turns the bare light into the gelled one. Check both readings, and the kind of lamp.":
    "Keine Folie macht aus dem einen Licht das andere. Prüfe beide Messungen und die Art der Lampe.",
  "{name}: the transmittance at {where} nm is {np}; a gel cannot add light. Are the values in percent?":
    "{name}: die Transmission bei {where} nm ist {np}; eine Folie kann kein Licht dazugeben. Sind die Werte in Prozent?",
  "{name}: it passes no light.": "{name}: sie lässt kein Licht durch.",
  "With the gel there is {peak} times the light at {where} nm; a gel cannot add light. Are the two readings swapped, or was the lamp or the meter moved?":
    "Mit der Folie ist bei {where} nm {peak}-mal so viel Licht; eine Folie kann keines dazugeben. Sind die Messungen vertauscht, oder wurde Lampe oder Messgerät bewegt?",
  "No gel of this colour passes as much light as the two readings say; the most it could pass is taken. Was the lamp or the meter moved?":
    "Keine Folie dieser Farbe lässt so viel Licht durch, wie die Messungen sagen; das Meiste, was möglich ist, gilt. Wurde Lampe oder Messgerät bewegt?",
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
  "The wavelength": "Die Wellenlänge",
  "The value at {number} nm": "Der Wert bei {number} nm",
  "{message} It is left out.": "{message} Er bleibt weg.",
  // interchange/contents.py
  transmittance: "Transmission",
  reflectance: "Reflexion",
  "{repeated} wavelengths, such as {first} nm, have several values. Which holds?":
    "{repeated} Wellenlängen, etwa {first} nm, haben mehrere Werte. Welcher gilt?",
  "{stated} nm is no wavelength of light.": "{stated} nm ist keine Wellenlänge von Licht.",
  "The transmittance at {nm} nm is {values}; a gel cannot add light. Are the values in percent?":
    "Die Transmission bei {nm} nm ist {values}; eine Folie kann kein Licht dazugeben. Sind die Werte in Prozent?",
  "{repeated} wavelengths were repeated.": "{repeated} Wellenlängen kamen mehrfach vor.",
  "At most {max_readings} readings are read from one file.":
    "Aus einer Datei werden höchstens {max_readings} Messungen gelesen.",
  "The wavelengths fell; they are turned round.": "Die Wellenlängen fielen; sie sind umgedreht.",
  "The wavelengths were out of order; they are sorted.":
    "Die Wellenlängen standen durcheinander; sie sind sortiert.",
  "The {kind} of {name} reaches {peak}. Are its values factors (at most 1) or percent?":
    "{name}: die {kind} reicht bis {peak}. Sind die Werte Faktoren (höchstens 1) oder Prozent?",
  "x {xy}, y {xy_2} is no colour that a light can have.":
    "x {xy}, y {xy_2} ist keine Farbe, die ein Licht haben kann.",
  "{cct_k} K is no colour temperature of a light.":
    "{cct_k} K ist keine Farbtemperatur eines Lichts.",
  "At most {max_spectra} spectra are read from one file.":
    "Aus einer Datei werden höchstens {max_spectra} Spektren gelesen.",
  "{damaged} of its {damaged_2} samples are damaged, too many to do without.":
    "{damaged} seiner {damaged_2} Werte sind beschädigt, zu viele, um ohne sie auszukommen.",
  "There are more faults like these; only the first are listed.":
    "Es gibt mehr solche Fehler; nur die ersten stehen hier.",
  "the spectrum": "das Spektrum",
  // interchange/cxf.py
  "The {name} does not say at which wavelength it begins; expected is a StartWL.":
    "{name} sagt nicht, bei welcher Wellenlänge es beginnt; erwartet ist StartWL.",
  "The CxF file holds no spectrum and no emissive chromaticity.":
    "Die CxF-Datei enthält kein Spektrum und keine Farbe eines Lichts.",
  "The file does not say how many nm its {count} samples are apart.":
    "Die Datei sagt nicht, wie viele nm ihre {count} Werte auseinander liegen.",
  "X, Y and Z add up to nothing.": "X, Y und Z ergeben zusammen nichts.",
  // interchange/dialect.py
  "{separators}, decimal comma": "{separators}, Dezimalkomma",
  tabs: "Tabulatoren",
  semicolons: "Semikolons",
  bars: "senkrechte Striche",
  commas: "Kommas",
  spaces: "Leerzeichen",
  "{separators}, decimal point": "{separators}, Dezimalpunkt",
  // interchange/readings.py
  "The line has neither x and y nor a colour temperature.":
    "Die Zeile hat weder x und y noch eine Farbtemperatur.",
  "Expected a number for {name} but found “{cell}”.":
    "Erwartet ist eine Zahl für {name}, gefunden „{cell}“.",
  // interchange/recognise.py
  "This XML is a “{name}” document; read are IES TM-27 and CxF3 (ISO 17972).":
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
  "No spectrum was found. Expected is a column or a row of wavelengths, such as 380, 385 … 780 nm ({fewest_samples} or more), with a value for each.":
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
  "a zip archive or a spreadsheet workbook; save the sheet as CSV":
    "ein Zip-Archiv oder eine Tabellenmappe; speichere das Blatt als CSV",
  "an old spreadsheet workbook; save the sheet as CSV":
    "eine alte Tabellenmappe; speichere das Blatt als CSV",
  "a PDF; save the numbers as CSV or text": "ein PDF; speichere die Zahlen als CSV oder Text",
  "a picture; save the numbers as CSV or text": "ein Bild; speichere die Zahlen als CSV oder Text",
  "compressed; unpack it first": "komprimiert; entpacke sie zuerst",
  "a formatted document; save it as plain text":
    "ein formatiertes Dokument; speichere es als reinen Text",
  "The file has {count} MB; at most {max_bytes} MB are read.":
    "Die Datei hat {count} MB; höchstens {max_bytes} MB werden gelesen.",
  "The file is empty.": "Die Datei ist leer.",
  "This is not a text file; save the spectra as text, CSV or TM-27.":
    "Das ist keine Textdatei; speichere die Spektren als Text, CSV oder TM-27.",
  "This is not a text file but {what}.": "Das ist keine Textdatei, sondern {what}.",
  // interchange/tm27.py
  "The TM-27 file has no SpectralDistribution, so no spectrum in it.":
    "Die TM-27-Datei hat keine SpectralDistribution, also kein Spektrum.",
  "Absorptance is not a light, gel or surface.":
    "Eine Absorption ist weder Licht noch Folie noch Oberfläche.",
  "The file calls its quantity “{quantity}”. What was measured?":
    "Die Datei nennt ihre Größe „{quantity}“. Was wurde gemessen?",
  "The value at {wavelength} nm": "Der Wert bei {wavelength} nm",
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
  "no CCT to compare": "keine CCT zum Vergleichen",
  "no gel": "keine Folie",
  "as warm as the target": "so warm wie das Ziel",
  "{mired} mired too warm": "{mired} mired zu warm",
  "{mired} mired too cool": "{mired} mired zu kühl",
  // lights/stand_in.py
  "not known": "nicht bekannt",
  "tungsten, halogen": "Glühlampe, Halogen",
  "daylight, window": "Tageslicht, Fenster",
  "HMI, metal halide": "HMI, Halogen-Metalldampf",
  "fluorescent tube": "Leuchtstoffröhre",
  "LED, white or bi-colour": "LED, weiß oder zweifarbig",
  "LED, mixed colours": "LED, gemischte Farben",
  "flash, xenon": "Blitz, Xenon",
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
  green: "grün",
  red: "Rot",
  yellow: "Gelb",
  magenta: "magenta",
  cyan: "Cyan",
  "No score: the standard camera cannot be balanced for so pure a colour.":
    "Kein Wert: auf eine so reine Farbe lässt sich die Normkamera nicht abgleichen.",
  "Not judged: the standard camera sees nothing of so pure a colour.":
    "Nicht beurteilt: von einer so reinen Farbe sieht die Normkamera nichts.",
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
  // rendering/ssi.py
  "none (spectra are compared)": "keiner (Spektren werden verglichen)",
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
  "Light skin": "Helle Haut",
  "Asian skin": "Asiatische Haut",
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
  "ΔE00 {most} at {steps} steps": "ΔE00 {most} bei {steps} Schritten",
  "Skin will look plainly different.": "Haut sieht deutlich anders aus.",
  "skin ΔE00 {skin}": "Haut ΔE00 {skin}",
  "The eye sees them alike, a camera does not.": "Das Auge sieht sie gleich, eine Kamera nicht.",
  "ΔE00 eye {most}, camera {camera_most}": "ΔE00 Auge {most}, Kamera {camera_most}",
  "On one camera balance the second light goes {shift_words}, though the eye sees nearly the same white.":
    "Bei einem Abgleich der Kamera wird das zweite Licht {shift_words}, obwohl das Auge fast dasselbe Weiß sieht.",
  "grey card ΔE00 camera {grey}, eye {eye_grey}": "Graukarte ΔE00 Kamera {grey}, Auge {eye_grey}",
  "The eye will see {tint} ({seen}).": "Das Auge wird {tint} sehen ({seen}).",
  "{name} shifts in colour ({index}).": "{name} verschiebt sich in der Farbe ({index}).",
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
  "A Duv of {duv} is beyond ±{largest_duv}, where a CCT has no meaning. Type x y instead, and check the unit: Duv, not CC.":
    "Ein Duv von {duv} liegt jenseits von ±{largest_duv}, wo eine CCT nichts bedeutet. Tippe stattdessen x y, und prüfe die Einheit: Duv, nicht CC.",
  "Give {one} or {other}, not both: they are one amount.":
    "Gib {one} oder {other} an, nicht beides: es ist dieselbe Menge.",
  "{name} is {amount}; a light that can be read gives more than zero.":
    "{name} ist {amount}; ein Licht, das sich messen lässt, gibt mehr als null.",
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
  "The target CCT": "Die CCT des Ziels",
  "The target Duv": "Der Duv des Ziels",
  // said.py
  "{most} and {last}": "{most} und {last}",
  "{most} or {last}": "{most} oder {last}",
};
