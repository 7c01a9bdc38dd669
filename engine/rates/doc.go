// Package rates reads a shop's published rates: what it charges, what that includes,
// how its first stage is priced and how it is taxed.
//
// Start with [Decode], which turns the file into [Rates] or says where it is wrong, and
// [Sample], a complete file of an invented shop. [Rates.CheckCode] identifies one exact
// set of rates on everything priced with it; [Rates.Warnings] lists what is allowed but
// usually a slip.
//
// # The file
//
// One JSON object in UTF-8 with the format line "underpaint rates 1". Every member is
// required unless marked "may be left out". [Decode] refuses the whole file, with the
// path of the first fault, if a member is not listed here or appears twice, if a number
// is out of bounds, or if a list is in the wrong order. Money is in major units of the
// shop's currency. A decimal is written as "85.00" or 85 and kept exactly, with at most
// six decimals; three prices in a list are plain numbers with as many. Three figures in
// a list are low, likely and high: one job in ten is below the first, half are below
// the second, one in ten is above the third. They may be equal but must not fall. A
// percentage is 0 to 100. "source", which every group may have, and "note" are texts of
// at most 300 characters.
//
//	format      "underpaint rates 1"
//	shop        name, town: texts of 1 to 80 characters
//	            contact: text (1 to 200); href may be left out: https:, http:, mailto: or tel:
//	            invented: true for a shop that does not exist
//	currency    an ISO 4217 code that package money knows
//	words       "us" or "uk": which names of parts; units "us" (feet, gallons) or "metric", for display only
//	country     ISO 3166-1 alpha-2: GB, not UK
//	rates_of    date, YYYY-MM-DD; valid_until: date, not before rates_of
//	labour      metal, prep, body, paint, fit: rate (decimal an hour, 0 to 1000000), pace (our hours × this, 0.3 to 3)
//	            includes: any of "supplies", "booth", "parts_chasing"
//	            least_charge_hours: 0 to 40
//	materials   list, each: id (word), name (us, uk), unit ("litre", "kilogram", "each"),
//	            price (decimal a unit, 0 to 1000000), source (needed here)
//	            how: exactly one of film, per_m2, per_car
//	              film: coats (0.5 to 12), dry_um (dry film of one coat, 1 to 2000 µm), volume_solids (0.02 to 1, by
//	                volume, ready to spray), transfer (0.1 to 1, share of what leaves the gun that stays on the car),
//	                base_share (may be left out = 1; 0.05 to 1, share of the litres that is the tin of base);
//	                the unit is a litre ready to spray, hardener and reducer included
//	              per_m2, per_car: quantity (0.0001 to 10000 units per square metre, or per car)
//	            area: "reached" (every face the gun reaches), "outer" (outer skins), "inside_and_under" (reached
//	              less outer), "frame" (a separate frame), "replaced" (parts replaced, only after the survey), "none"
//	              (goes with per_car); a paint leaves out of "reached" a frame with a material of its own, and in the
//	              strip stage the parts replaced where these have one
//	            stage: "strip" (strip and survey) or "after"
//	            standards: those that use it, of driver, show, concours; a strip material serves all three, since that
//	              stage does not depend on the standard
//	            factor: may be left out; standard → quantity × this, 0.05 to 20; not for the strip stage
//	            scopes: may be left out = all; those of "whole_body", "outside_only", "metalwork_only" that need it
//	consumables money_per_metal_hour: three figures (0.01 to 1000000) for wire, gas and discs, or null = in the rate
//	parts       price_factor (decimal, starting prices × this, 0.01 to 100000), handling_percent,
//	            prices: list of part (id), way ("patch", "section", "full", "fabricate"),
//	              body (a body's id; may be left out = every body that has the part),
//	              price: three figures (0.01 to 1000000000) or null = starting price × factor,
//	              had: "made_today", "section_only", "found", "by_hand", "specialist", or null = as the starting figures
//	              fit: may be left out; how a new-made panel fits: "fits", "needs_work", "mixed", "not_known"
//	              weeks: may be left out; three figures (0.1 to 520) until a part ordered again is there
//	              used_share: may be left out; of parts that must be found, how many are used ones, 0 to 1
//	              (these three for sections and full panels; then price and had may both be null)
//	            as_they_come: may be left out = true; false: no part is missing and every panel fits until found
//	              otherwise, for a shop that counts that in its allowance
//	what_is_done null = starting figures; else standard → kind (outer, hidden, structural,
//	            structural_near_mounting) → condition → six chances in the order of the ways, adding to 1
//	strip_and_survey
//	            charged: each of the steps once, step and how ("fixed", "each", "by_the_hour", "at_cost");
//	              no_more_than (may be left out, only by the hour): hours for a two-door with a unitary body, 0.1 to 1000,
//	              scaled to other bodies like the step's own hours
//	            price: amount for the fixed steps, or null = likely hours × rates + the stage's materials
//	            to_stop: amount for putting it back or boxing it up when the customer stops there
//	            includes: text of at most 2000 characters
//	sent_out    handling_percent; work: list of id, name, price (three figures), stage, standards,
//	              scopes (as above, needed here)
//	supplies    how "in_the_rate"; or "share_of_labour" with percent and, may be left out, no_more_than (amount a job)
//	tax         name (us, uk), percent; on: labour, materials, parts, supplies, sent_out, each "yes", "no", "not_sure";
//	            published "without_tax" or "with_tax"; note (may be empty)
//	time        hours_a_week: three figures (1 to 400), weeks_until_start (0 to 520),
//	            waits_weeks: may be left out; three figures (0.1 to 520) of weeks waiting for others
//	allowance   before_percent, after_percent: how much jobs grow, of the work after the strip;
//	            in_range: may be left out = true: counted in the range; false: set apart and named beside it
//	doubt       may be left out = starting figures (data/doubt.json); else how far the figures may be wrong:
//	            shared (by all cars of the shop together), own (by one car alone), each told, walk_round, survey,
//	            opening_up, ways: 0 to 0.5, none above the one before it; standard deviations of the log of the
//	            price after the strip
//	prices_over_time
//	            may be left out = prices stay as published however long a job takes
//	            promise: how: "held_for_the_whole_job", "held_until", "held_months" or "not_held"
//	              until: date, only with held_until; months: 1 to 60, only with held_months
//	              from: may be left out = "strip_authorized"; or "strip_begins"; only with held_months
//	              on: any of "labour", "materials", at least one; none with not_held
//	            labour_percent_a_year, parts_percent_a_year (also work sent out), materials_percent_a_year: three
//	              figures, more than 0 and at most 50: how much the shop's prices rise in a year
//	hidden_history may be left out = starting figures (package olddamage); else in_range (left out = true) and any of
//	            hit, answer, sagged, earlier_hand, warped, cracked, packed, hours, sent_out, with the members of
//	            olddamage/data/olddamage.json; what is left out stays a starting figure
//	another_body may be left out = never offered; else what it takes to use another body instead of mending this one
//	            bodies: list, at least one, of body (its id, each once), price (three figures), to_be_had (chance that a
//	              sound one can be found, 0 to 1), weeks (of waiting; three figures, 0.1 to 520; may be left out)
//	            the rest may be left out = starting figures (data/another_body.json):
//	              search_hours: fit; moving_across_hours: fit, metal; its_metal_hours: three figures (0.01 to 10000);
//	                the last two for a two-door with a unitary body, scaled to other bodies like the strip
//	              papers: three figures, an amount; its_prep_times (0 to 1): its strip and prep after the survey, as a
//	                share of that on this body; advise_when_dearer_by_percent (0 to 100)
//	terms       list of at most 40 paragraphs of 1 to 2000 characters
//	own_figures null = starting figures; else what the shop's past jobs taught and it chose to use:
//	            learnt_on: date; jobs_code: check code of those past jobs
//	            rust: list of group (a pocket group), factor (depth of rust × this, 0.4 to 2.5), jobs (1 to 100000)
//	            hours: metal, prep, body, paint, fit, each may be left out: factor, jobs
//	            spread: may be left out; factor on the spread of the depth of rust, jobs
//	            doubt: may be left out; growth_percent (-30 to 60, in place of the allowance), shared (0.02 to 0.3),
//	              own (0.03 to 0.25), jobs, from ("told" or "survey", the stage that they are about)
//	record      may be left out or null; else how earlier ranges came out: below, inside, above (jobs, at least 10
//	            together), from, to (dates on which the first and the last were finished), jobs_code
//
// # Guarantees
//
// Decode reads no clock, returns nothing of a refused file, and gives the same Rates
// for the same bytes on every build. The check code does not depend on the order of
// members or on white space; it changes with any figure or text.
package rates
