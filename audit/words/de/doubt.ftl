# Wo nicht sicher ist, welcher Teil der Aufzeichnung zu einem Abschnitt gehört.

doubt-pinned = Abschnitt { $leg }: { $ends } von Hand festgelegt.
doubt-pinned-from = der Beginn um { $time }
doubt-pinned-claim = das angenommene Ende um { $time }
doubt-set-out = {" "}(Aufbruch um { $time })
doubt-another = {" "}Um einen anderen zu nehmen, dessen Aufbruch angeben: { $pins }.
doubt-other-walks = Die Aufzeichnung enthält { $count } Gänge dieser Bahn; { $chosen ->
    [day] von denen am Tag des Plans wird der am besten passende
   *[fit] der am besten passende wird
} genommen{ $begun }.{ $settle }
doubt-taken = Abschnitt { $leg }: Er gilt als { $reading }, was nur zu { $sure } sicher ist.
doubt-otherwise = { $taken } Sonst am wahrscheinlichsten ({ $sure }): { $reading }.{ $settle }
doubt-likelier = { $taken } Wahrscheinlicher, aber nicht sicher genug, um es anzunehmen ({ $sure }): { $reading }.{ $settle }
doubt-settle-other = {" "}Wenn das stimmt, so festlegen: { $pins }.
doubt-settle-taken = {" "}Wenn er wie angenommen gegangen wurde, so festlegen: { $pins }.
doubt-no-leg = Von den { $whole } Minuten zwischen den Enden der Bahn gehören { $lost } zu keinem gefundenen Abschnitt: Was von ausgelassenen Abschnitten gesagt wird, ist mit Vorsicht zu nehmen.{ $settle }
doubt-settle-no-leg = {" "}Wurden in dieser Zeit { -point(form: "many") } erreicht, so festlegen: { $pins }.
doubt-by-log = { $doubt } Nach dem Marschprotokoll endete er dort: Zur notierten Zeit war der Gang { $away } von seinem Anfang entfernt, und die { $paces } gezählten { -pace } sind { $counted }.
doubt-not-walked = nicht gegangen
doubt-walked = gegangen von { $start } bis { $end }
doubt-given-up = begonnen und aufgegeben von { $start } bis { $end }
doubt-walked-elsewhere = in einem anderen Teil der Aufzeichnung gegangen
doubt-given-up-elsewhere = in einem anderen Teil der Aufzeichnung begonnen und aufgegeben
doubt-gave-up = Abschnitt { $leg }: Er gilt als nicht begonnen, die Bahn als vorher aufgegeben, was nur zu { $sure } sicher ist. Der Weg führte dann ohne Halt an einem späteren { -point } vorbei, wie es auch ein Heimweg kann: Ebenso gut kann der Abschnitt ausgelassen ({ $left_out }) und die Bahn weitergegangen worden sein.
doubt-also = { $doubt } { $also }
doubt-tried-before = Zwischen dem Ende von Abschnitt { $before } und dem Anfang von Abschnitt { $leg } führte der Gang { $off } weit weg und zurück, { $minutes } Minuten lang: mehr als eine Suche. Es kann ein erster, aufgegebener Versuch an Abschnitt { $leg } in falscher Richtung gewesen sein.{ $held } Nachfragen.
doubt-tried-held = {" "}Auf dem Hinweg wurden { $held } Gitter gehalten; auf der Marschskizze stehen für Abschnitt { $leg } { $planned }.
