# The rules of walking time: what each is called, what it says in figures, and who says so.

rule-naismith = Naismith
rule-naismith-says = Naismith: 5 km an hour, and 10 min for each 100 m climbed (W. W. Naismith, Scottish Mountaineering Club
    Journal, 1892, in its metric form).
rule-naismith-1892 = Naismith 1892
rule-naismith-1892-says = Naismith 1892: an hour for 3 miles, and an hour for each 2000 feet climbed (W. W. Naismith, Scottish
    Mountaineering Club Journal, 1892).
rule-langmuir = Langmuir
rule-langmuir-says = Langmuir: Naismith, less 10 min for each 300 m down a slope of 5 to 12°, and 10 min more for each 300 m down
    a steeper one (E. Langmuir, Mountaincraft and Leadership).
rule-tobler = Tobler
rule-tobler-says = Tobler: 6 km an hour x exp(-3.5 |slope + 0.05|), on a path (W. Tobler, NCGIA Technical Report 93-1, 1993).
rule-tobler-off-path = Tobler off path
rule-tobler-off-path-says = Tobler off path: six tenths of Tobler's speed on a path (W. Tobler, NCGIA Technical Report 93-1, 1993).
rule-3-km-h = 3 km/h
rule-3-km-h-says = 3 km/h: 3000 m an hour, whatever the ground (US Army task 071-329-1006, STP 21-1-SMCT, the standard for moving
    on foot).
