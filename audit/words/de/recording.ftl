# Was aus einer Aufzeichnung weggelassen oder in ihr berichtigt wurde, und was über sie zu wissen ist.

recording-spike = Ausreißer
recording-stray-end = verirrtes Ende
recording-same-place = gleicher Ort
recording-off-grid = außerhalb des Gitters
recording-out-of-order = in falscher Reihenfolge
recording-clock-jump = Uhr verstellt
recording-mixed-by-time = nach der Zeit gemischt
recording-parts-out-of-order = Teile in falscher Reihenfolge
recording-side-by-side = nebeneinander aufgezeichnet
recording-same-time = gleiche Zeit
recording-no-times = keine Zeiten
recording-few-times = wenige Zeiten
recording-no-time = ohne Zeit
recording-clock-not-set = Uhr nicht gestellt
