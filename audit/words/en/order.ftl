# In which order points were visited.

order-walked = The order walked is { $names }{ $sure ->
    [none] {""}
   *[some] {" "}({ $sure } sure)
}.
order-not-visited = Not visited: { $names }.
order-may-be = after { $here } it may have been { $other } ({ $chance })
order-not-sure = The order is not sure: { $steps }. The time at a { -point } settles it, as in --claim "{ $leg }=09:15".
