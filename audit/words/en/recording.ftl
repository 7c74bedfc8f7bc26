# What was left out of a recording or put right in it, and what to know of it.

recording-spike = spike
recording-stray-end = stray end
recording-same-place = same place
recording-off-grid = off the grid
recording-out-of-order = out of order
recording-clock-jump = clock jump
recording-mixed-by-time = mixed by time
recording-parts-out-of-order = parts out of order
recording-side-by-side = side by side
recording-same-time = same time
recording-no-times = no times
recording-few-times = few times
recording-no-time = no time
recording-clock-not-set = clock not set
