# Die Prüfung eines Plans.

check-agrees = Nichts zu berichtigen: Der Plan stimmt mit seinen eigenen Rechnungen überein.
check-first = { $count ->
    [one] { $count } Angabe ist
   *[other] { $count } Angaben sind
} in { $plan } zu berichtigen: siehe { $command }
check-things = { $count ->
    [one] { $count } Angabe ist
   *[other] { $count } Angaben sind
} zu berichtigen.
check-shared = { $slip }: Abschnitte { $names }.
check-agrees-mark = stimmt
check-differs-mark = WEICHT AB
check-course-mark = WEICHT AB, wegen der Nadelabweichung der Bahn
check-plan = Plan
check-grid-azimuth-deg = Gitterrichtung
check-magnetic-azimuth-deg = Magnetisch
check-back-magnetic-azimuth-deg = Gegenrichtung
check-true-azimuth-deg = Geographisch
check-grid-from-true-deg = daraus Gitter
check-across = in gerader Linie, wo niemand geht
check-whole-leg = der ganze Abschnitt
check-distance-m = Entfernung
check-paces = { -pace }
check-root = Wurzel aus { $east }² + { $north }²
check-via = über die Zwischenpunkte
check-pacing = { $distance } x { $rate } / 100
check-mils = { $given } Strich
check-less = { $azimuth } - { $angle }
check-plus = { $azimuth } + { $angle }
