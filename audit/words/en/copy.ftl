# What a copy of a plan does not carry; ends "does not carry ...".

copy-lacks = { $form } does not carry { $lost }.
copy-onto = The grid-magnetic angle was turned by the difference of the two convergences to { $angle }; look it up in the margin of the map in hand all the same.
copy-read = To read it: { $command }
copy-angle-date = the date of the grid-magnetic angle
copy-sheet = the corners of the map sheet
copy-safety = the safety bearing
copy-order = that the { -point(form: "many") } may be visited in any order
copy-unused = { -point(form: "many") } on no leg: { $names }
copy-listed = the order in which the { -point(form: "many") } are listed
copy-known = how well these { -point(form: "many") } are known: { $names }
copy-well = how well the { -point(form: "many") } are known
copy-vias = the via positions of { $legs }
copy-vias-well = how well via positions are known
copy-grid-azimuth = the grid { -azimuth(form: "many") } stated for { $legs }
copy-magnetic-azimuth = the magnetic { -azimuth(form: "many") } stated for { $legs }
copy-true-azimuth = the true { -azimuth(form: "many") } stated for { $legs }
copy-distance-m = the distances stated for { $legs }
copy-paces = the { -pace } stated for { $legs }
copy-note = the notes stated for { $legs }
copy-reckoned = that the end of { $legs } is dead reckoned and no { -point }
copy-names = the names of the legs
copy-jumps = that { $legs } does not begin where the one before ends
copy-renamed = the name of the end "{ $old }", which is called "{ $new }"
