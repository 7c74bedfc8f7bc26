# Beginnings of the lines of the short debrief.

terminal-simulated = SIMULATED: { $note }
terminal-plan = plan: { $finding }
terminal-leg = leg { $leg }: { $sentence }
terminal-keep = keep: { $what }. { $evidence }
terminal-work-on = work on: { $what }. { $evidence } Exercise: leg-audit guide { $cause }
terminal-keep-said = keep: { $said }
terminal-work-on-either = work on: { $what }. { $evidence } Exercises: leg-audit guide { $one }, leg-audit guide { $other }
terminal-work-on-said = work on: { $said }
terminal-what-remains = to look at next
terminal-note = note: { $note }
terminal-written-to = Written to { $place }
terminal-written-files = Written to { $place }: { $files }
terminal-left-beside = { $folder } also holds { $files }, which this run did not write and which may name people. Take { $many ->
    [no] it
   *[yes] them
} away before you share the folder.
terminal-open = Open the page in a browser: { $page }
terminal-pictures = { $count ->
    [one] { $count } picture
   *[other] { $count } pictures
}
terminal-no-heights = { $file } has no heights for part of { $legs }.
terminal-roads = { $count ->
    [one] { $count } road in the areas is
   *[other] { $count } roads in the areas are
} for grade --roads, and not looked at here.
terminal-demo = Plan, recording and log of the demo are now in { $folder }. To debrief them by hand:
