# Woher die Nadelabweichung stammt.

angle-east = { $size } Ost
angle-west = { $size } West
angle-by-plan = Der Plan gibt die Nadelabweichung mit { $angle } an; die Marschskizze rechnet damit.
angle-computed = Der Plan gibt keine Nadelabweichung an; die Marschskizze rechnet mit der berechneten, { $angle }.
angle-day = den { $date } ({ $source ->
    [plan] laut Plan
    [option] wie mit --date angegeben
   *[track] laut Aufzeichnung
})
angle-day-unknown = den Tag des Weges, der nicht bekannt ist
angle-no-model = Kein Magnetfeldmodell gilt für { $day }; der Winkel ist nicht geprüft.
angle-error = {" "}(Standardfehler { $error })
angle-norths = { $model } für { $day }: Missweisung { $declination }{ $error }, Meridiankonvergenz { $convergence };
    Ost ist positiv.
angle-sum = Nadelabweichung = Missweisung − Meridiankonvergenz = { $declination } − { $convergence } = { $angle }.
angle-rule = Magnetische Richtung = Gitterrichtung − Nadelabweichung. Abschnitt { $leg }: { $grid } − { $angle } = { $magnetic }.
