# Was aus einer Aufzeichnung weggelassen oder in ihr berichtigt wurde, und was über sie zu wissen ist.

recording-spike = Ausreißer
recording-stray-end = abseits gelegenes Ende
recording-same-place = gleicher Ort
recording-off-grid = außerhalb des Gitters
recording-out-of-order = in falscher Reihenfolge
recording-clock-jump = Uhr verstellt
recording-mixed-by-time = nach der Zeit gemischt
recording-parts-out-of-order = Teile in falscher Reihenfolge
recording-side-by-side = nebeneinander aufgezeichnet
recording-same-time = gleiche Zeit
recording-no-times = keine Zeiten
recording-few-times = wenige Zeiten
recording-no-time = ohne Zeit
recording-clock-not-set = Uhr nicht gestellt
recording-before = Abschnitt { $leg } liegt vor dem Beginn der Aufzeichnung: Wie und ob er gegangen wurde, ist nicht bekannt.
recording-under-way = Abschnitt { $leg } hatte schon begonnen, als die Aufzeichnung begann: Seine Entfernung und sein Anfang sind die der Aufzeichnung, nicht die des Weges.
recording-straight-start = Die Aufzeichnung hat dort eine Lücke, wo Abschnitt { $leg } begonnen wurde: Der Ort ist auf der Geraden zwischen den Ortungen davor und danach angenommen.
recording-straight-claim = Die Aufzeichnung hat dort eine Lücke, wo Abschnitt { $leg } endete: Der Ort ist auf der Geraden zwischen den Ortungen davor und danach angenommen.
recording-reckoned-start = Die Aufzeichnung hat dort eine Lücke, wo Abschnitt { $leg } begonnen wurde: Ort und Zeit sind errechnet, { $gone } zurück auf dem danach gegangenen Weg.
recording-reckoned-claim = Die Aufzeichnung hat dort eine Lücke, wo Abschnitt { $leg } endete: Ort und Zeit sind errechnet, { $gone } weiter auf dem davor gegangenen Weg.
recording-noise-usual = einem üblichen Wert von { $usual } m, da weder Halte noch gerade Strecken etwas zeigen
recording-noise-halts = den Halten, zusammen { $minutes } min, und einem üblichen Wert von { $usual } m
recording-noise-walking = geradem Gehen von zusammen { $walked } min und einem üblichen Wert von { $usual } m
recording-noise-both = den Halten, zusammen { $minutes } min, geradem Gehen von { $walked } min und einem üblichen Wert von { $usual } m
recording-too-few = Nur { $count } Ortungen der Aufzeichnung sind brauchbar: Darin ist kein Abschnitt zu erkennen. Die ganze Aufzeichnung suchen.
recording-nearest = Die Aufzeichnung kommt bis auf { $near } an { $point } heran und keinem anderen { -point } der Bahn näher.
recording-elsewhere = Der Weg gehört vielleicht zu einer anderen Bahn. { $near } Prüfen, ob Plan und Aufzeichnung zum selben Weg gehören und ob die { -point(form: "many") } dort liegen, wo sie liegen sollen.
recording-nothing-walked = Kein Abschnitt des Plans wurde in dieser Aufzeichnung erkannt. { $near } Prüfen, ob Plan und Aufzeichnung zum selben Weg gehören und ob die { -point(form: "many") } dort liegen, wo sie liegen sollen.
recording-outings = Die Aufzeichnung enthält { $count } Gänge nahe der Bahn; ausgewertet wird { $chosen ->
    [day] von denen am Tag des Plans der am besten passende
   *[fit] der am besten passende
}, begonnen { $begun }.
recording-untimed = Die Aufzeichnung enthält keine brauchbaren Zeiten: Abschnitte werden nach der Reihenfolge der Ortungen zugeordnet, Halte sind nicht zu sehen, und es gibt keine Zeitangaben.
recording-sparse = Nur alle { $interval } s eine Ortung: Ecken sind abgeschnitten und kurze Umgehungen verschwinden.
recording-wandered = Der Empfänger schwankte um etwa { $noise } m: Kurze Abschnitte lassen sich in der Richtung nicht beurteilen.
recording-log-note = Das Marschprotokoll: { $note }
recording-log-astray = Das Marschprotokoll hat Einträge für { $names }, zu denen der Plan keinen Abschnitt hat; sie wurden weggelassen.
recording-log-unseen = Das Marschprotokoll hat Angaben zu { $count ->
    [one] Abschnitt { $legs }, den diese Aufzeichnung nicht als gegangen zeigt
   *[other] den Abschnitten { $legs }, die diese Aufzeichnung nicht als gegangen zeigt
}: Daneben steht nichts. Den Geher fragen.
recording-other-day = Der Plan gilt für den { $plan }, die Aufzeichnung beginnt aber am { $begun }: Prüfen, ob beide zum selben Weg gehören.
recording-walk-of-other-day = Der Plan gilt für den { $plan }, der Gang, der genommen wird, ist aber vom { $walked }.
recording-log-numbers = Seine Abschnitte wurden nach ihren Nummern genommen: { $pairs }.
recording-log-number = „{ $written }“ als „{ $leg }“
recording-log-north = Seine { $north ->
    [grid] Gitterrichtungen
   *[true] geographischen Richtungen
} wurden mit den Winkeln der Marschskizze in magnetische umgerechnet.
recording-log-other-north = Seine Richtungen für { $legs } liegen alle { $size } { $side ->
    [right] rechts
   *[left] links
} der magnetischen der Marschskizze, und gegangen wurde nach dieser: Sie wurden { $north ->
    [true] von geographisch Nord
    [grid] von Gitternord
   *[other] anders als eingestellt
} notiert und weggelassen.
recording-log-time = Abschnitt { $leg }: Nach dem Marschprotokoll endete er { $minutes } min { $side ->
    [later] später
   *[earlier] früher
} als hier angenommen, um { $time }.{ $settle }
recording-log-heard = { $now ->
    [known] { $alone ->
        [known] Das Marschprotokoll hat { $moved ->
            [from] den Anfang
           *[claim] das Ende
        } von Abschnitt { $leg } von { $before } auf { $time } verlegt. Irrt es dort, so festlegen: { $pin }.
       *[not] Nach dem Marschprotokoll wurde Abschnitt { $leg } gegangen und endete um { $time }; nach der Aufzeichnung allein gälte er nicht als zu Ende gegangen.
    }
   *[not] { $alone ->
        [known] Nach dem Marschprotokoll gilt Abschnitt { $leg } nicht als zu Ende gegangen; nach der Aufzeichnung allein hätte er um { $before } geendet. Irrt es dort, so festlegen: { $pin }.
       *[not] Das Marschprotokoll hat geändert, wie Abschnitt { $leg } gilt; zu Ende gegangen wurde er so oder so nicht.
    }
}
recording-log-watch = Das Marschprotokoll beendet die Abschnitte, zu denen es eine Zeit hat ({ $count }), oder die meisten davon, gleichmäßig etwa { $minutes } min { $side ->
    [later] später
   *[earlier] früher
} als hier angenommen: Die Uhr ging um so viel { $side ->
    [later] vor
   *[earlier] nach
}. Die Zeiten werden genommen, als wäre sie richtig gegangen.{ $clock ->
    [utc] {""}
   *[other] {" "}Sie wird als { $clock } gelesen.
}
recording-log-count = Abschnitt { $leg }: { $paces } { -pace } wären { $rate } auf 100 m des Abschnitts; so viele macht niemand. Die Zahl wurde weggelassen.
recording-log-day = Abschnitt { $leg }: Nach dem Marschprotokoll endete er am { $noted }, nach der Aufzeichnung aber am { $walked }: Vom Marschprotokoll gilt nur die Uhrzeit.
recording-log-settle = {" "}Stimmt das Marschprotokoll, so festlegen: { $pin }.
recording-simulated = Die Aufzeichnung ist als simuliert gekennzeichnet.
recording-planned-route = Die Datei enthält auch eine geplante Route, die hier nicht gelesen wurde.
recording-called = Die Spur, die bei Ortung { $point } beginnt, heißt { $name }.
recording-detail-out-of-order = Ortungen mit früherer Zeit als die vorige wurden nach der Zeit geordnet.
recording-detail-clock-jump = Die Uhr wurde unterwegs zurückgestellt; die Zeiten von { $count } Ortungen wurden um bis zu { $minutes } min auf die Uhr der übrigen verschoben.
recording-detail-clock-returned = Die Uhr sprang unterwegs und kam wieder zurück; die Zeiten von { $count } Ortungen wurden um bis zu { $minutes } min auf die Uhr der übrigen verschoben.
recording-detail-mixed = Gleichzeitig laufende Teile der Datei wurden nach der Zeit gemischt: Es sind zu viele, um zu wählen.
recording-detail-parts = Teile der Datei, die vor dem vorangehenden beginnen, wurden nach der Zeit geordnet.
recording-detail-side-by-side = Gleichzeitige Aufzeichnungen, meist { $apart } auseinander: Die mit den meisten Ortungen wurde behalten, und von den anderen, was ihre Lücken füllt.
recording-detail-same-time = Von Ortungen mit derselben Zeit wurde die erste behalten{ $elsewhere ->
    [0] {""}
    [one] ; { $elsewhere } der anderen lag an einem anderen Ort
   *[other] ; { $elsewhere } der anderen lagen an einem anderen Ort
}.
recording-detail-no-times = Keine Ortung hat eine Zeit. Die Reihenfolge der Datei gilt als der gegangene Weg.
recording-detail-never-set = Die Uhr war nie gestellt: Sie zeigt Jahre vor 1980. Tagesangaben bedeuten hier nichts.
recording-detail-before-set = Zeiten vor 1980, als die Uhr noch nicht gestellt war, gelten als fehlend.
recording-detail-few-times = Das meiste wurde ohne Zeiten aufgezeichnet, daher gilt die Reihenfolge der Datei als der gegangene Weg; { $count } Ortungen in Teilen mit Zeiten wurden weggelassen.
recording-detail-no-time = Ortungen ohne Zeit unter anderen mit Zeiten wurden weggelassen.
recording-detail-no-time-parts = Ortungen ohne Zeit unter anderen mit Zeiten wurden weggelassen; Teil { $numbers }{ $more ->
    [0] {""}
   *[other] {" "}und { $more } weitere
} der Datei hat gar keine Zeiten.
recording-detail-single-time = Eine einzige Ortung mit Zeit: Es lässt sich keine Zeit messen.
recording-detail-stood = Die Uhr stand: { $count } Ortungen haben { $times ->
    [1] ein und dieselbe Zeit
   *[other] nur { $times } verschiedene Zeiten
}. Die Reihenfolge der Datei gilt als der gegangene Weg.
recording-detail-off-grid = Ortungen, die so weit weg liegen, dass das Gitter der Bahn sie nicht zeigen kann, wurden weggelassen.
recording-detail-spike = Ortungen, die zu Fuß in der Zeit nicht zu erreichen und wieder zu verlassen waren, wurden weggelassen.
recording-detail-stray = Ortungen am Anfang, am Ende oder an einer Pause der Aufzeichnung, von denen niemand zu Fuß in der Zeit zur nächsten kommt, wurden weggelassen.
recording-detail-same-place = Ortungen genau am Ort der vorigen und ohne Zeiten wurden weggelassen.
recording-in-gaps = Abschnitt { $leg }: { $share } davon liegen in Lücken der Aufzeichnung; dort ist die gezeichnete Linie nicht der gegangene Weg.
recording-silent = Abschnitt { $leg }: { $share } seiner Zeit liegen in Lücken der Aufzeichnung: Was darin geschah, eine lange Rast oder ein Weg hin und zurück, ist nicht zu sehen.
recording-astray = { $count ->
    [one] { $count } Ortung
   *[other] { $count } Ortungen
} von { $of } ohne brauchbare Position weggelassen (die erste ist Ortung { $first }).
recording-without-zone = { $count ->
    [one] { $count } Zeit
   *[other] { $count } Zeiten
} ohne Zeitzone als UTC genommen.
recording-unreadable = { $what } waren nicht lesbar (die erste Angabe ist { $first }) und gelten als fehlend.
recording-breaks-off = Die Datei bricht in Zeile { $line } ab, nach { $bytes } Byte
recording-lost = Die Datei ist ab Zeile { $line } nicht lesbar ({ $reason }), und was folgt, ist verloren, { $lost } von { $of } Byte
recording-kept-before = { $where }; { $count ->
    [one] { $count } Ortung
   *[other] { $count } Ortungen
} davor behalten{ $unfinished ->
    [yes] , ohne die dort gerade geschriebene
   *[no] {""}
}.
recording-field-time = { $count ->
    [one] { $count } Zeit
   *[other] { $count } Zeiten
}
recording-field-ele = { $count ->
    [one] { $count } Höhe
   *[other] { $count } Höhen
}
recording-field-hdop = { $count ->
[one] { $count } Genauigkeitsangabe
   *[other] { $count } Genauigkeitsangaben
}
recording-field-cadence = { $count ->
    [one] { $count } Schrittfrequenz
   *[other] { $count } Schrittfrequenzen
}
recording-private = Privat: Namen von Dateien und Spuren fehlen, die Aufzeichnung beginnt mit dem Aufbruch zum ersten Abschnitt und endet mit dem letzten, und Zeiten zählen von ihrem Beginn an.
recording-private-log = Auch die Vermerke des Marschprotokolls fehlen: In eigenen Worten geschrieben, können sie Personen nennen.
recording-rounds = Die Aufzeichnung ist viele Male so lang wie die Bahn. Nur die Runden{ $chosen ->
    [day] {" "}am Tag des Plans
   *[fit] {""}
}, die an ihren { -point(form: "to") } am besten vorbeiführen, wurden gewogen, und eine nach { $begun } wird genommen. Andere kamen am ersten { -point } vorbei: { $times }{ $later ->
    [0] {""}
   *[other] {" "}und { $later } spätere
}. Um eine andere zu nehmen, ihren Beginn mit --from festlegen.
recording-other-letters = Die Buchstaben der Datei sind nicht in der Kodierung, die sie nennt: als ISO-8859-1 gelesen.
recording-gzip = Die gzip-Packung ist nach { $bytes } entpackten Bytes beschädigt.
recording-one-fix = { $file }: 1 brauchbare Ortung ist kein Gang.
