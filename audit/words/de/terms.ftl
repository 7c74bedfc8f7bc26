# Die Wörter des Fachs, in denen sich Überlieferungen unterscheiden. Ein Begriff, der
# nach einem anderen heißt, wie "-azimuth-azimut" nach "-azimuth", kann für ihn stehen.
# Das Geschlecht richtet die Wörter davor.

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
