# Where it is not sure which part of the recording a leg has.

doubt-pinned = Leg { $leg }: { $ends } settled by hand.
doubt-pinned-from = its start at { $time }
doubt-pinned-claim = its claim at { $time }
doubt-set-out = {" "}(it set out at { $time })
doubt-another = {" "}To take another, say when it set out: { $pins }.
doubt-other-walks = The recording holds { $count } walks of this course; { $chosen ->
    [day] of those of the plan's day the one that fits it best
   *[fit] the one that fits it best
} is taken{ $begun }.{ $settle }
doubt-taken = Leg { $leg }: it is taken as { $reading }, which is only { $sure } sure.
doubt-otherwise = { $taken } Likeliest otherwise ({ $sure }): { $reading }.{ $settle }
doubt-likelier = { $taken } Likelier, but not sure enough to be taken ({ $sure }): { $reading }.{ $settle }
doubt-settle-other = {" "}If so, settle it: { $pins }.
doubt-settle-taken = {" "}If it was walked as taken, settle it: { $pins }.
doubt-no-leg = Of the { $whole } minutes between the ends of the course { $lost } belong to no leg that was found: take what is said of skipped legs with care.{ $settle }
doubt-settle-no-leg = {" "}If the walker came to the { -point(form: "many") } then, settle it: { $pins }.
doubt-by-log = { $doubt } By the walker's log it ended there: at the time noted the walk was { $away } from its start, and the { $paces } { -pace } counted are { $counted }.
doubt-not-walked = not walked
doubt-walked = walked from { $start } to { $end }
doubt-given-up = begun and given up from { $start } to { $end }
doubt-walked-elsewhere = walked in another part of the recording
doubt-given-up-elsewhere = begun and given up in another part of the recording
doubt-gave-up = Leg { $leg }: it is taken as not started, the course given up before it, which is only { $sure } sure. The way then led by a later { -point } without a stop, as a way home may: the leg may as well have been left out ({ $left_out }), and the course walked on.
doubt-also = { $doubt } { $also }
doubt-tried-before = Between the claim of leg { $before } and the start of leg { $leg } the walk went { $off } off and back, { $minutes } minutes: more than a search. It may be a first try at leg { $leg } on a wrong { -azimuth }, given up.{ $held } Ask the walker.
doubt-tried-held = {" "}On the way out it held { $held } grid; the card of leg { $leg } has { $planned }.
