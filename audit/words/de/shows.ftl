# Was eine Klasse zeigt und was an ihr zu fragen ist.

shows-place = { $across } nach { $east ->
    [yes] Ost
   *[no] West
}, { $up } nach { $north ->
    [yes] Nord
   *[no] Süd
}
shows-fewer-points = Die Vorgabe { $standard } verlangt { $asked } { -point(form: "many") }, aber { $lanes } { $count ->
    [one] hat
   *[other] haben
} nur { $has }: Dort werden alle verlangt. Prüfen, ob es die richtige Vorgabe ist.
shows-fault = { $lane }, { $point } (Abschnitt { $leg }): { $seen }{ $doubt } Dort ist die Markierung, der Plan oder die Marschskizze falsch,
    die Gehenden sind es nicht: hingehen und nachsehen. Der { -point } zählt in keiner Bewertung.
shows-gathered = { $sharing } der { $walkers } sicheren Gehenden brachen von ein und derselben Stelle zum nächsten Abschnitt auf, { $off } von der geplanten
    ({ $where }{ $told ->
    [yes] , ±{ $error }
   *[no] {""}
}); um diese Stelle streuen sie um { $scatter }.
shows-alike = die { $walkers } sicheren Gehenden enden im Mittel { $off } davon ({ $where }{ $told ->
    [yes] , ±{ $error }
   *[no] {""}
}), { $sharing } von ihnen
    nach dieser Seite; was jeder auf anderen Abschnitten in Richtung und Schrittmaß abweicht, ist abgezogen, und sie streuen um { $scatter }.
shows-read-alike = {" "}Wie weit er daneben steht, ist nicht sicher: Alle kamen denselben Weg, und beim mittleren Gang ist nur zu { $sure } sicher,
    welcher Teil zu diesem Abschnitt gehört; ist einer falsch gelesen, sind es alle. Er kann auch anderswo auf ihrem Weg ab { $start }
    stehen, oder daneben.
shows-missed-by-all = { $lane }, { $point } (Abschnitt { $leg }): Keiner der { $walkers } sicheren Gehenden fand ihn, { $missed } von
    ihnen verfehlten ihn; der nächste kam bis auf { $near } heran. Von den anderen fanden sie die meisten. Steht er, wo Plan und Marschskizze ihn haben? Hingehen und
    nachsehen, bevor er jemandem angerechnet wird: Wo er sonst steht, zeigen die Gänge nicht, und er bleibt in der Bewertung.
shows-angle-alike = { $lane }: { $sharing } der { $walkers } Gehenden zeigen denselben Fehler: { $mistake }. Er ist der wahrscheinlichste auf
    { $named } ihrer { $legs } Abschnitte. Im Median gingen sie { $size } { $side ->
    [right] rechts
   *[left] links
} der Richtungen der Marschskizze; der Winkel ist { $angle } { $east ->
    [yes] Ost
   *[no] West
}. Wo so viele dasselbe tun, haben sie es vielleicht so gelernt, oder Plan, Marschskizze oder Karte geben es so vor: danach zuerst fragen. Niemand ist
    daran allein schuld.
shows-compass = { $thing ->
    [compass] Kompass
   *[device] Gerät
} { $name }: Die { $carriers }, die ihn trugen, gingen { $size } { $side ->
    [right] rechts
   *[left] links
} von ihren Richtungen, verglichen mit den { $others } anderen (95-%-Bereich { $low } bis { $high }). Zeigt der Kompass { $out } { $side ->
    [right] zu wenig
   *[left] zu viel
}? Ihn an einer bekannten Linie mit einem anderen vergleichen, bevor er wieder ausgegeben wird.{ $angle ->
    [yes] {" "}So viel gäbe auch eine weggelassene Nadelabweichung: zuerst fragen, ob diese Gehenden sie weggelassen haben.
   *[no] {""}
}
shows-broken = Die Aufzeichnung von { $walker } ist beschädigt. { $note } Ist der Rest noch auf dem Gerät? Noch einmal kopieren.
shows-harder = { $lane }, Abschnitt { $leg } ({ $start } bis { $end }): Seine Ablagen, ohne das vom Abschnitt davor Mitgebrachte,
    sind { $ratio }-mal so groß wie die der anderen Abschnitte, wenn das Können der Gehenden herausgerechnet ist (95-%-Bereich { $low }
    bis { $high }, { $walkers } Gehende).
    Das ist { $more ->
    [yes] mehr
   *[no] nicht mehr
}, als seine Länge erklärt, die sie { $length }-mal so groß machen würde.
shows-too-few-legs = Zu wenige Abschnitte wurden von genug Gehenden gegangen, um sie zu vergleichen.
shows-turned-alike = { $lane }: Abschnitte werden nicht verglichen, wo die meisten denselben Fehler mit der Nadelabweichung machten; er ist, was
    ihre Ablagen zeigen.
shows-no-comparison = Die Ablagen reichen für einen Vergleich der Abschnitte nicht aus.
shows-no-model = Ob ein Abschnitt schwerer ist als die übrigen, das Können der Gehenden herausgerechnet, wurde nicht ermittelt: Dazu
    braucht es statsmodels (pip install "leg-audit[class]").
shows-company = Ging { $second } mit { $first }? Abseits der { -point(form: "many") } war { $second } auf { $within } genau dort, wo { $first }
    { $apart } s vorher gewesen war, { $together } min lang, { $share } des Weges. Von anderen Paaren, gleich auf welcher Bahn, mit gleichem Abstand
    beim Start wären 95 von 100 weniger als { $usual } min so gegangen. Ein Paar, das zusammen losgeschickt wurde, oder ein Pfad,
    den alle nahmen, sieht genauso aus: beide fragen.
shows-batch-clock = Nach den Aufzeichnungen wurde der Start { $minutes } min { $later ->
    [yes] später
   *[no] früher
} verlassen als nach der Liste (Median von { $count }); { $taken ->
    [recording] es gelten die Zeiten der Aufzeichnungen
    [both] es gelten die Zeiten der Aufzeichnungen, und wo der Start der Liste anders entschiede, ist es zweifelhaft
   *[roster] es gilt der Start der Liste
}. Gehen die Uhren falsch, stellt --shift alle richtig; sind alle spät gestartet, ist nichts falsch.{ $hours ->
    [none] {""}
   *[other] {" "}Das sind fast ganze Stunden: Aufzeichnungen und Liste gelten vielleicht in zwei Zeitzonen (--shift { $hours }).
}
shows-clock = { $walker } verließ den Start nach der Aufzeichnung { $minutes } min { $later ->
    [yes] später
   *[no] früher
} als nach der Liste, anders als die übrigen; { $taken ->
    [recording] es gelten die Zeiten der Aufzeichnung
    [both] es gelten die Zeiten der Aufzeichnung, und wo der Start der Liste anders entschiede, ist es zweifelhaft
   *[roster] es gilt der Start der Liste
}. War der Start verspätet, oder geht eine Uhr falsch?{ $hours ->
    [none] {""}
   *[other] {" "}Das sind fast ganze Stunden: Die Uhr gilt vielleicht in einer anderen Zeitzone; { $hours } unter shift in der Liste stellt sie richtig.
}
shows-batch-day = Der Plan gilt für den { $planned }, aber { $count ->
    [one] die Aufzeichnung ist
   *[other] { $count } Aufzeichnungen sind
} { $walked ->
    [none] von einem anderen Tag
   *[other] vom { $walked }
}. Wurde der Plan noch einmal benutzt, oder sind es Aufzeichnungen eines anderen Tages? Im ersten Fall sein Datum
    berichtigen: Die Missweisung ist die jenes Tages.
shows-day = Die Aufzeichnung von { $walker } ist { $walked ->
    [none] von einem anderen Tag
   *[other] vom { $walked }
}, { $unlike ->
    [others] anders als die übrigen; der Plan gilt für den { $planned }
   *[plan] aber der Plan gilt für den { $planned }
}. Wurde an einem anderen Tag gegangen, oder gehört sie zu einem anderen Weg? Bewertet wurde sie dennoch.
shows-shifted = Alle Uhren wurden um { $minutes ->
    [0] {""}
   *[other] { $minutes } min{" "}
}{ $seconds } s { $later ->
    [yes] vorgestellt
   *[no] zurückgestellt
}: { $ground }.
shows-not-shifted = Alle Uhren blieben, wie sie sind: { $why ->
    [roster] Ohne Liste gibt es nichts, womit das erste Verlassen des Starts zu vergleichen wäre
   *[starts] Keine Zeile der Liste hat einen Start und eine Aufzeichnung, die ihn verlässt
}.
shows-shift-asked = wie verlangt
shows-shift-nothing = kein Start nach Liste und Aufzeichnung war zu vergleichen
shows-shift-crossing = nach dem ersten Verlassen des Starts gegen die Liste, { $count ->
    [1] von einem einzigen Gehenden
   *[other] Median von { $count } (die Hälfte davon { $spread ->
        [0] auf die Sekunde gleich
       *[other] auf { $spread } s genau
    })
}
shows-shift-alone = Alle Uhren wurden nach dem Start eines einzigen Gehenden um { $minutes } min { $later ->
    [yes] vorgestellt
   *[no] zurückgestellt
}; keine andere Zeile der Liste hat einen Start und eine Aufzeichnung, die ihn verlässt. Ging diese Uhr falsch, oder war der Aufbruch zu
    einer anderen Zeit als nach der Liste? Gehen die Uhren richtig, ohne --shift bewerten.
shows-code-times = Die Zeiten bei den Codes liegen { $minutes } min { $later ->
    [yes] später
   *[no] früher
}, als die Aufzeichnungen mit verstellten Uhren an diesen { -point(form: "to") } sind (Median von { $count }){ $unshifted ->
    [yes] ; mit den Uhren, wie sie waren, stimmen sie überein
   *[no] {""}
}. Ist die Verschiebung richtig?
shows-lane-fitted = Die Liste nennt keine Bahn; der Gang wurde der zugeordnet, zu der er passt: { $lane }.
shows-left-again = Nach der Aufzeichnung wurde der Start vor dem ersten Abschnitt { $times }-mal verlassen, { $minutes } min auseinander.
    Für die Zeit zählt das erste Mal; dass es ein späteres sein kann, steckt im Fehler dieser Zeit.
shows-own-shift = Nach der Liste wurde die Uhr um { $minutes } min { $seconds } s { $later ->
    [yes] vorgestellt
   *[no] zurückgestellt
}, sonst um nichts.
shows-another-unusable = Eine weitere Aufzeichnung war nicht zu gebrauchen: { $problem }
shows-two-radii = { $standard } zählt einen { -point } innerhalb von { $radius } als gefunden, { $plan } innerhalb von { $planned }: Die
    Klasse und ihre Auswertungen gehen nach { $standard }. Einzeln ausgewertet gilt der des Plans.
shows-free-plan = { $plan } lässt die { -point(form: "many") } in jeder Reihenfolge anlaufen, { $standard } verlangt die geplante: Es
    gilt der Plan, und ein { -point } ist gefunden, wann immer er erreicht wurde.
shows-twice = { $files } enthalten genau dieselbe Aufzeichnung. Wessen ist sie?
shows-other-lane = Die Aufzeichnung von { $walker } passt besser zu { $better } als zu { $lane }: { $passed } der { -point(form: "many") }
    erreicht gegen { $own }. Wurde das Gerät vertauscht oder die falsche Bahn gegangen? Bewertet wurde auf { $lane }.
shows-other-course = { $walker }: { $elsewhere } Wessen Aufzeichnung ist es?
shows-unusable = Die Aufzeichnung von { $walker } ist nicht zu gebrauchen: { $problem }
shows-no-recording = { $walker } hat keine Aufzeichnung: kein Beleg, aber auch kein Nichtbestehen.
shows-codes-alone = { $walker } hat keine Aufzeichnung: Von dem Gang sind nur die mitgebrachten Codes bekannt. Das ist kein
    Nichtbestehen.
shows-codes-left-over = Von { $walker } { $count ->
    [one] gehört der Code in Zeile { $lines } der Codeliste
   *[other] gehören die Codes in den Zeilen { $lines } der Codeliste
} zu keinem Versuch und keiner Bahn, die hier bewertet werden; { $count ->
    [one] er wurde
   *[other] sie wurden
} weggelassen. Stimmen Versuch und Bahn?
shows-several-walks = { $files }: { $walks } Gänge, und die Liste kennt { $known } davon ({ $rows }). Wer ging { $left ->
    [one] den anderen
   *[other] die anderen
}?
shows-perhaps-two = Die Aufzeichnung von { $walker } kommt zweimal an { -point(form: "to") } der Bahn vorbei: Es können zwei Gänge in einer Datei sein. Waren es
    zwei? Bewertet wurde sie als einer.
shows-file-missing = Die Liste gibt { $walker } { $files }, doch eine solche Aufzeichnung wurde nicht abgegeben. Ohne Aufzeichnung kein
    Beleg, aber auch kein Nichtbestehen.
shows-nobodys = { $file } gehört nach der Liste niemandem und wurde nicht bewertet.{ $fits } Wessen ist sie?
shows-fits = {" "}Am besten passt sie zu { $lane } ({ $passed } der { -point(form: "many") } erreicht).
shows-joined = { $second } geht weiter, wo { $first } abbricht; beide wurden zu einem Gang von { $walker } verbunden. Sind es zwei
    Personen, eine Liste angeben.
shows-roads = { $walker } ging nach der Aufzeichnung { $seen }{ $minutes ->
    [none] {""}
   *[some] {" "}({ $minutes } min)
} weit näher als { $within } an { $roads }{ $sure ->
    [none] ; wegen ihres Fehlers ist das nicht sicher
   *[some] , davon { $sure }{ $sure_minutes ->
    [none] {""}
   *[some] {" "}({ $sure_minutes } min)
} auch bei Abzug des ganzen Fehlers
}. Die Vorgabe { $rule ->
    [keep-off] verlangt, Straßen zu meiden, auch ein Überqueren zählt
   *[cross-only] lässt Straßen nur überqueren, und was kurz genug dafür ist, zählt nicht
}; was um die { -point(form: "many") } liegt, ist weggelassen. Das ändert keine Bewertung: fragen.
