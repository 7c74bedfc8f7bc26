# Wo übliche Gänge enden, bevor jemand geht.

forecast-head-leg = Abschnitt
forecast-head-length = { $unit ->
    [yards] Yard
   *[metres] Meter
}
forecast-head-along = längs
forecast-head-across = quer
forecast-head-near = 50 % innerhalb
forecast-head-far = 95 % innerhalb
forecast-head-sight = in Sicht
forecast-head-offset = sicheres Vorhalten
forecast-taken = Gehender: { $source }. Die Richtung eines Abschnitts weicht um { $turn } ab{ $side ->
    [left] , im Mittel { $mean } nach links
    [right] , im Mittel { $mean } nach rechts
   *[none] {""}
}, und seine Entfernung { $far ->
    [short] ist im Mittel { $size } zu kurz und{" "}
    [far] ist im Mittel { $size } zu weit und{" "}
   *[none] {""}
}weicht um { $ratio } ab (Standardabweichungen).
forecast-ordinary = ein üblicher, nach den Einstellungen des Programms
forecast-earlier = nach { $count ->
    [one] { $count } früheren Abschnitt
   *[other] { $count } früheren Abschnitten
} dieses Gehenden{ $left ->
    [0] {""}
   *[other] ; { $left } weggelassen, zu weit daneben für übliche Ungenauigkeit
}
forecast-changed = { $source }, geändert durch die angegebenen Optionen
forecast-clicks = Richtungen werden in Rasten von { $click }° eingestellt: Auf jedem geraden Abschnitt weicht die Richtung um das ab, was das Runden übrig lässt.
forecast-middle = { $middle } ± { $error }
forecast-axes = { $major } mal { $minor }
forecast-meaning-places = Längs und quer: Mitte und Standardabweichung der Stellen, an denen Gänge des Abschnitts enden, hinter (+) und rechts (+)
    vom { -point }, jeder am Anfang des Abschnitts begonnen.
forecast-meaning-within = Innerhalb: Halbachsen der Ellipse, in der so viele Gänge enden.
forecast-meaning-sight = In Sicht: am Ende der Zählung höchstens { $sight } vom { -point } entfernt.
forecast-meaning-offset = Sicheres Vorhalten: Wer um so viel absichtlich seitlich vorhält, endet in 95 von 100 Gängen auf dieser Seite.
forecast-all = { $count ->
    [one] Der eine { -point }
   *[other] Alle { $count } { -point(form: "many") }
} in Sicht: { $share }.
forecast-off = Um { $size } nach { $side ->
    [left] links
   *[right] rechts
} vorgehalten (Seitenabweichung mit Absicht):
forecast-off-leg = Abschnitt { $leg }: { $turn } { $side ->
    [left] nach links; endet links
   *[right] nach rechts; endet rechts
} vom { -point } { $chance }; gleich in Sicht { $sight }
forecast-no-legs = die früheren Auswertungen enthalten keinen Abschnitt mit üblicher Ungenauigkeit; die üblichen Werte gelten.
forecast-near-area = { $point } liegt { $away } von { $kind ->
    [no-go] dem Sperrgebiet
   *[hazard] der Gefahrenstelle
} { $area }, näher als { $near }: { $leg ->
    [none] der Ankunftsradius
   *[other] Ankunftsradius und übliche Ungenauigkeit von Abschnitt { $leg }
}.{ $walks ->
    [none] {""}
   *[other] {" "}{ $walks } von 100 üblichen Gängen auf Abschnitt { $leg } kommen hin.
}
forecast-walks-reach = { $walks } von 100 üblichen Gängen auf Abschnitt { $leg }, { $start } bis { $end }, kommen { $kind ->
    [no-go] in das Sperrgebiet
   *[hazard] zu der Gefahrenstelle
} { $area }.
