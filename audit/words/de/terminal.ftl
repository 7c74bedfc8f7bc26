# Anfänge der Zeilen der kurzen Auswertung.

terminal-simulated = SIMULIERT: { $note }
terminal-plan = Plan: { $finding }
terminal-leg = Abschnitt { $leg }: { $sentence }
terminal-keep = beibehalten: { $what }. { $evidence }
terminal-work-on = üben: { $what }. { $evidence } Übung (englisch): leg-audit guide { $cause }
terminal-what-remains = was übrig bleibt
