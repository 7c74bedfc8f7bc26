# Worauf ein Urteil beruht.

judged-inside = Die Aufzeichnung kommt bis auf { $near } an den { -point } heran, innerhalb des Radius von { $radius }.
judged-outside = Die Aufzeichnung kommt bis auf { $near } an den { -point } heran: { $outside } außerhalb des Radius von { $radius }.
judged-reaches = Der ganze Fehler der Aufzeichnung ist { $error } und reicht so weit.
judged-reaches-not = Der ganze Fehler der Aufzeichnung ist { $error } und reicht nicht so weit.
judged-fix = Von allen Ortungen, wie sie aufgezeichnet sind und zu welcher Zeit auch immer, liegt die nächste { $fix } vom
    { -point }; die { $near } gelten für die bereinigte Aufzeichnung in dem Teil des Ganges, der für diesen { -point } zählt.
judged-unseen = In einer Lücke der Aufzeichnung kann der Gehende { $nearer } näher gekommen sein; das ist im Fehler mitgezählt.
judged-out-of-turn = Das war nicht auf dem Weg zu diesem { -point }, sondern zu einer anderen Zeit des Ganges.
judged-begins-here = Die Aufzeichnung beginnt an diesem { -point }: Der Weg dorthin ist nicht aufgezeichnet.
judged-not-recorded = Die Aufzeichnung zeigt den Weg zu diesem { -point } nicht bis zum Ende: Er kann vor ihrem Anfang oder nach
    ihrem Ende gegangen worden sein. Was die Auswertung davon sagt, zählt nur den aufgezeichneten Teil.
judged-elsewhere = Welcher Teil der Aufzeichnung der Weg zu diesem { -point } war, ist nicht sicher ({ $doubt } gegen den hier
    genommenen), und in einem anderen kam der Gehende bis auf { $near } heran.
judged-debrief-close = Die Auswertung wägt ab, was sonst der Weg zu diesem { -point } gewesen sein kann, und findet es zu knapp, um es zu
    entscheiden.
judged-debrief-missed = Die Auswertung sagt „verfehlt“: Sie zählt nur den Weg zu diesem { -point } und keinen Fehler seiner Einmessung.
judged-code-wrong = Der mitgebrachte Code „{ $code }“ ist nicht der dieses { -point(form: "of") }.
judged-code-right = Der Code „{ $code }“ ist der dieses { -point(form: "of") }.
judged-code-no-key = Der Code „{ $code }“ wurde mitgebracht; kein Schlüssel sagt, ob er stimmt.
judged-nothing = Von diesem Gang gibt es keinen Beleg; das ist kein Nichtbestehen. Nachfragen oder wiederholen.
judged-points = { $found } von { $counted } { -point(form: "to") } gefunden{ $others }; { $needed } verlangt.
judged-others = , { $list }
judged-doubtful = { $count } zweifelhaft
judged-missed = { $count } verfehlt
judged-unevidenced = { $count } ohne Beleg
judged-fewer = Die Vorgabe verlangt { $asked } { -point(form: "many") }, die Bahn hat aber { $has }.
judged-left-out = { $count } nicht bewertet: Dort ist die Bahn selbst im Zweifel.
judged-time-unknown = Wie lange es dauerte, ist nicht zu sagen; die Zeitgrenze ist { $limit }.
judged-time-noted = Wie lange es dauerte, sagt keine Aufzeichnung; der Code vom letzten { -point } wurde um { $noted } notiert. Die
    Zeitgrenze ist { $limit }.
judged-in-time = Es dauerte { $time } von { $limit }.
judged-grace = Es dauerte { $time } von { $limit }: zu spät, aber in der Nachfrist; siehe die Wertung.
judged-clocks = Es dauerte { $time } von { $limit }: zu spät, aber um nicht mehr, als diese Zeit falsch sein kann ({ $error }).
judged-late = Es dauerte { $time } von { $limit }: zu spät.
judged-two-starts = Nach der eigenen Uhr dauerte die Aufzeichnung { $own }, vom Start der Liste an { $roster }; die Grenze ist { $limit }.
    Der Start war verspätet, oder eine Uhr geht falsch: nachfragen.
