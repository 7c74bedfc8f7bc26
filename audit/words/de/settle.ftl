# Was eine Ursache von ähnlichen unterscheidet.

settle-gm-angle-omitted = Die Zahl auf der eigenen Marschskizze: gegen Gitternord oder gegen magnetisch Nord?
settle-carried = Karte oder Marschskizze des Gehers: wo der { -point } davor auf ihr steht.
settle-gm-angle-reversed = Die Rechnung auf der eigenen Marschskizze.
settle-gm-angle-doubled = Was am Kompass als Nadelabweichung eingestellt ist, und die Rechnung auf der eigenen Marschskizze.
settle-declination-for-gm-angle = Welcher der beiden Winkel auf der Marschskizze steht.
settle-gm-angle-stale = Das Datum der Karte; die ganze Klasse würde gleich abweichen.
settle-what-was-set = Was auf diesem Abschnitt eingestellt war: das eigene Marschprotokoll oder der Kompass, wie er zuletzt stand.
settle-reciprocal = Wo die Sonne stand; ist auch jeder spätere Abschnitt verkehrt herum gegangen, so liegt es an der Nadel.
settle-right-angle = { -azimuth.gender ->
    [feminine] Die
    [neuter] Das
   *[masculine] Der
} { -azimuth } auf der eigenen Marschskizze.
settle-bezel-clicks = Worauf der Drehring stehen blieb, oder derselbe Abschnitt noch einmal.
settle-bezel-wrong-way = Ein Abschnitt, der weder nach Nord oder Süd noch nach Ost oder West führt.
settle-mils-as-degrees = Die Einheit hinter der Zahl auf der Marschskizze.
settle-wrong-mil-circle = Wie viele Strich auf dem Kompass selbst für den Vollkreis stehen.
settle-azimuth-digits = Die drei Ziffern auf der eigenen Marschskizze.
settle-dial-misread = { -azimuth.gender ->
    [feminine] Die notierte
    [neuter] Das notierte
   *[masculine] Der notierte
} { -azimuth }.
settle-neighbour-azimuth = Ob der Kompass am Beginn des Abschnitts neu eingestellt wurde.
settle-magnetic-disturbance = Ob dort ein Zaun, eine Leitung oder ein Fahrzeug stand; andere würden an derselben Stelle abweichen.
settle-steady-bias = Der Kompass an einer bekannten Linie, dann jemand anderes mit demselben Kompass.
settle-hundred-miscounted = Die Perlen, Knoten oder Steine, die bei jedem Hunderter bewegt wurden, oder die Zahl im Marschprotokoll.
settle-single-double-pace = Was gezählt wird, ein Fuß oder beide, und was die Marschskizze meint.
settle-pace-long = Eine gemessene Strecke in gleichem Gelände, dreimal abgeschritten.
settle-pace-short = Eine gemessene Strecke in gleichem Gelände, dreimal abgeschritten.
settle-wrong-ruler = Die Entfernungen auf der eigenen Marschskizze oder die gezählten { -pace }.
settle-slope-paced = Ein gleich langer Abschnitt in der Ebene.
settle-early-stop = Die { -pace }, die auf diesem Abschnitt gezählt wurden.
settle-overshoot = Die { -pace }, die gezählt wurden, und woran zu sehen sein sollte, dass man zu weit ist.
settle-hundred-miscounted-by-log = Die Perlen, Knoten oder Steine, die bei jedem Hunderter bewegt wurden.
settle-overshoot-by-log = Woran zu sehen sein sollte, dass man zu weit ist.
settle-bypass-paced = Ob beim Gehen zur Seite weitergezählt wurde.
settle-veer = Derselbe Abschnitt, von Zwischenziel zu Zwischenziel gegangen.
settle-sidehill = Derselbe Abschnitt in der Gegenrichtung: Die Abweichung wechselt die Seite.
settle-handrail = Ob auf der Karte ein Weg, ein Rücken oder ein Bach so verläuft.
settle-bypass-unequal = Die { -pace }, die hinaus und zurück gezählt wurden.
settle-obstacle-one-side = Auf welcher Seite die Hindernisse dieses Abschnitts umgangen wurden.
settle-digits-transposed = Die Koordinate auf dem eigenen Blatt, Ziffer für Ziffer.
settle-digit-wrong = Die Koordinate auf dem eigenen Blatt, Ziffer für Ziffer.
settle-easting-northing-swapped = Der eingetragene { -point } auf der eigenen Karte.
settle-wrong-grid-line = Der eingetragene { -point } auf der eigenen Karte.
settle-wrong-plotting-scale = Der Maßstab auf dem Planzeiger neben dem der Karte.
settle-datum = Die Ablage der anderen an jedem { -point } der Bahn.
settle-point-misplaced = Die Ablage der anderen an diesem { -point } und ein Besuch dort.
settle-wrong-start = Wo der Abschnitt begonnen wurde: Was lag dort daneben?
settle-wrong-point = Was am { -point } notiert wurde: sein Code, seine Beschreibung.
settle-point-skipped = Die { -point(form: "many") }, die notiert wurden.
settle-order-changed = Die Zeiten an den { -point(form: "to") }, und ob die Reihenfolge frei war.
settle-passed-unseen = Ob der { -point } von dort zu sehen ist, wo vorbeigegangen wurde.
settle-in-turn = Die Zeiten, die an beiden { -point(form: "to") } notiert wurden: als Beginn und angenommenes Ende des Abschnitts angeben.
