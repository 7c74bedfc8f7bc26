# In welcher Reihenfolge Punkte angelaufen wurden.

order-walked = Die gegangene Reihenfolge ist { $names }{ $sure ->
    [none] {""}
   *[some] {" "}(zu { $sure } sicher)
}.
order-not-visited = Nicht angelaufen: { $names }.
order-may-be = nach { $here } kann es { $other } gewesen sein ({ $chance })
order-not-sure = Die Reihenfolge ist nicht sicher: { $steps }. Die Zeit an einem { -point } legt sie fest, wie in --claim "{ $leg }=09:15".
