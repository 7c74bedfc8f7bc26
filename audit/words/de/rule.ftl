# Die Regeln für die Gehzeit: wie sie heißen, was sie in Zahlen sagen und von wem sie sind.

rule-naismith = Naismith
rule-naismith-says = Naismith: 5 km in der Stunde und 10 min je 100 m Anstieg (W. W. Naismith, Scottish Mountaineering Club
    Journal, 1892, in metrischer Form).
rule-naismith-1892 = Naismith 1892
rule-naismith-1892-says = Naismith 1892: eine Stunde für 3 Meilen und eine Stunde je 2000 Fuß Anstieg (W. W. Naismith, Scottish
    Mountaineering Club Journal, 1892).
rule-langmuir = Langmuir
rule-langmuir-says = Langmuir: Naismith, je 300 m Abstieg mit 5 bis 12° Gefälle 10 min weniger, je 300 m steileren Abstiegs 10 min
    mehr (E. Langmuir, Mountaincraft and Leadership).
rule-tobler = Tobler
rule-tobler-says = Tobler: 6 km in der Stunde x exp(-3,5 |Neigung + 0,05|), auf einem Weg (W. Tobler, NCGIA Technical Report
    93-1, 1993).
rule-tobler-off-path = Tobler weglos
rule-tobler-off-path-says = Tobler weglos: sechs Zehntel von Toblers Geschwindigkeit auf einem Weg (W. Tobler, NCGIA Technical
    Report 93-1, 1993).
rule-3-km-h = 3 km/h
rule-3-km-h-says = 3 km/h: 3000 m in der Stunde auf jedem Gelände (US Army task 071-329-1006, STP 21-1-SMCT, die Vorgabe für das
    Gehen im Gelände).
