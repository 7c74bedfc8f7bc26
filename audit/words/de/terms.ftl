# Die Wörter des Fachs, in denen sich Überlieferungen unterscheiden. Ein Begriff, der
# nach einem anderen heißt, wie "-azimuth-azimut" nach "-azimuth", kann für ihn stehen.
# Das Geschlecht richtet die Wörter davor.
#
# Glossar: für jede Sache ein Wort. Wo sich Streitkräfte, Bergrettung und Wanderschulen
# unterscheiden, steht das allgemeinere; in Klammern, wie es anderswo heißt.
#
#   azimuth               Richtung; Marschzahl nur für die Zahl auf Marschskizze und Kompass
#                         (Marschrichtungszahl, Marschkompasszahl)
#   grid, magnetic, true  Gitterrichtung, magnetische, geographische Richtung; Gitternord,
#                         magnetisch Nord, geographisch Nord
#   back azimuth          Gegenrichtung
#   grid-magnetic angle   Nadelabweichung: magnetisch gegen Gitternord
#   declination           Missweisung: magnetisch gegen geographisch Nord (Deklination)
#   grid convergence      Meridiankonvergenz
#   datum                 Bezugssystem (geodätisches Datum)
#   reference             Koordinate (UTM-Koordinate, Meldegitter)
#   easting, northing     Rechtswert, Hochwert (Ostwert, Nordwert)
#   mil, degree           Strich, Grad; mil circle: Strichteilung
#   dial, bezel, click    Skala, Drehring, Raste
#   plotting tool         Planzeiger
#   leg card              Marschskizze (Marschtabelle)
#   log                   Marschprotokoll
#   recording, track      Aufzeichnung; Spur nur für den Teil einer GPX-Datei
#   fix                   Ortung
#   course, lane          Bahn
#   leg                   Abschnitt (Teilstrecke, Schenkel)
#   walk                  Gang als Ereignis, Weg als Linie
#   walker                der Gehende, die Gehenden
#   point, marker, code   Punkt, Markierung, Code
#   via position          Zwischenpunkt
#   mark (to walk to)     Zwischenziel
#   handrail              Leitlinie
#   aiming off            seitlich vorhalten
#   safety bearing        Sicherheitsrichtung
#   pace count            Schrittmaß (Schritte auf 100 m); Schrittzahl für einen Abschnitt
#   single, double paces  Einfachschritte, Doppelschritte
#   cadence               Schrittfrequenz
#   claim                 angenommenes Ende: wo der Gehende den Punkt annahm
#   miss                  Ablage: vom Punkt zum angenommenen Ende
#   offset from the line  Seitenabweichung; in Bildern Abstand von der Linie, in Tabellen
#                         neben der Linie
#   azimuth error         Richtungsabweichung
#   slope distance        Schrägstrecke
#   ordinary error        übliche Ungenauigkeit
#   mistake, slip         Fehler; Versehen für eine Ziffer oder ein Vorzeichen
#   error (measured)      Fehler der Aufzeichnung, Standardfehler
#   arrival radius        Ankunftsradius; Ankunftskreis, wo er gezeichnet ist
#   evidence              Beleg
#   debrief               Auswertung
#   standard, grade       Vorgabe, Bewertung; score: Wertung
#   records               Unterlagen
#   training aid          Ausbildungsmittel
#
# Gebeten wird in der Grundform („Den Kompass prüfen“), weder mit du noch mit Sie.

-azimuth = { $form ->
    [many] Marschzahlen
    [of] Marschzahl
   *[one] Marschzahl
}
    .gender = feminine
-azimuth-marschzahl = { -azimuth }
    .gender = feminine
-azimuth-azimut = { $form ->
    [many] Azimute
    [of] Azimuts
   *[one] Azimut
}
    .gender = neuter
-azimuth-richtungswinkel = { $form ->
    [many] Richtungswinkel
    [of] Richtungswinkels
   *[one] Richtungswinkel
}
    .gender = masculine

-point = { $form ->
    [many] Punkte
    [to] Punkten
    [of] Punktes
   *[one] Punkt
}
-point-punkt = { -point }
-point-posten = { $form ->
    [many] Posten
    [to] Posten
    [of] Postens
   *[one] Posten
}
-point-kontrollpunkt = { $form ->
    [many] Kontrollpunkte
    [to] Kontrollpunkten
    [of] Kontrollpunktes
   *[one] Kontrollpunkt
}

-pace = { $form ->
    [to] Schritten
   *[many] Schritte
}
-pace-single-pace = { $form ->
    [to] Einfachschritten
   *[many] Einfachschritte
}
-pace-double-pace = { $form ->
    [to] Doppelschritten
   *[many] Doppelschritte
}
