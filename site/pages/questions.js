// The ten questions as data: what is asked, the answers as button texts, what
// an answer writes into the car, and which answer a car already carries. means
// is what an answer is called away from its question.
// "Not sure" is always an answer, last and of the same size.

import { withBodies, withLife, withOption, withoutEarlierPlaces } from "./car.js";

const TWO_DOORS = ["two_door_unitary", "hardtop_on_frame"];
const EVERY_BODY = [...TWO_DOORS, "four_door_saloon", "convertible_unitary", "open_two_seater", "pickup"];
const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);
const NOT_SURE = { id: "not_sure", text: "Not sure" };

const KEPT = [
  { id: "driven_all_year", text: "Driven all year" },
  { id: "driven_in_summer", text: "Driven in summer, garaged in winter" },
  { id: "mostly_garaged", text: "Mostly put away in a garage" },
  { id: "mostly_outside", text: "Mostly in an open shed or outside" },
  NOT_SURE,
];
const CLIMATES = [
  { id: "pick", text: "Pick a place from a list" },
  { id: "dry", text: "Dry, little rain" },
  { id: "mild", text: "Mild, little road salt" },
  { id: "damp", text: "Damp, or some road salt" },
  { id: "salt", text: "Heavy road salt in winter" },
  { id: "sea", text: "By the sea" },
  NOT_SURE,
];
const SHORE = [
  { id: "shore", text: "By the shore: salt spray reached it" },
  { id: "near", text: "Near the sea, out of the spray" },
  { id: "inland", text: "Further inland" },
  NOT_SURE,
];

/** A place that is not one of the climate answers was picked from the list. */
function climateOf(place) {
  if (place === undefined) return null;
  return CLIMATES.some((c) => c.id === place) ? place : "pick";
}

function bodyOf(car) {
  if (!car.bodies) return null;
  if (car.bodies.length > 2) return "not_sure";
  return TWO_DOORS.includes(car.bodies[0]) ? "two_door" : car.bodies[0];
}

/** Two bodies are also what stands there before the question is answered. */
function frameOf(car, said) {
  if (!car.bodies || car.bodies.length === 2) return said ?? null;
  return car.bodies[0] === "hardtop_on_frame" ? "frame" : "shell";
}

/** The questions in the words of the shop's country. */
export function questions(words) {
  const uk = words === "uk";
  const frame = uk ? "chassis" : "frame";
  const lifeOf = (index) => (car) => car.life?.[index];
  const first = lifeOf(0);
  return {
    body: {
      number: 1, short: "Body", title: "Which is nearest to your car?",
      hint: "Five short questions, then a range of what the body work might cost, before the paint comes off.",
      answers: [
        { id: "two_door", text: "Two-door with a fixed roof", drawing: "two_door_unitary" },
        { id: "four_door_saloon", text: "Four-door", drawing: "four_door_saloon" },
        { id: "convertible_unitary", text: "Convertible with back seats", drawing: "convertible_unitary" },
        { id: "open_two_seater", text: "Open two-seater", drawing: "open_two_seater" },
        { id: "pickup", text: "Pickup", drawing: "pickup" },
        { id: "none", text: "None of these" }, NOT_SURE,
      ],
      chosen: bodyOf,
      apply(car, id) {
        if (id === "none") return car;
        if (id === "not_sure") return withBodies(car, EVERY_BODY);
        if (id !== "two_door") return withBodies(car, [id]);
        return bodyOf(car) === "two_door" ? car : withBodies(car, TWO_DOORS);
      },
    },
    frame: {
      number: 1, short: "Built", title: `Does the body bolt to a separate ${frame}?`,
      hint: `Look in under the edge below the door, from beside the car. Never put any part of yourself under a car that stands on a jack.`,
      drawing: "under_the_door",
      answers: [
        { id: "frame", text: `Yes: a separate ${frame} runs below the floor` },
        { id: "shell", text: "No, it is one shell" }, NOT_SURE,
      ],
      chosen: frameOf,
      apply: (car, id) => withBodies(car, id === "frame" ? ["hardtop_on_frame"] : id === "shell" ? ["two_door_unitary"] : TWO_DOORS),
    },
    fenders: {
      number: 1, short: "Bed",
      title: uk ? "Do the rear wings stand outside the load bed?" : "Do the rear fenders stand outside the bed?",
      answers: [{ id: "yes", text: "Yes, a narrow bed between them" }, { id: "no", text: "No, the bed sides are smooth" }, NOT_SURE],
      chosen: (car, said) => said ?? (car.options?.includes("outside_fenders") ? "yes" : null),
      apply: (car, id) => withOption(car, "outside_fenders", id === "yes"),
    },
    year: { number: 2, short: "Made", title: "What year was it made?" },
    place: {
      number: 3, short: "Where", title: "Where has it spent most of its life?", answers: CLIMATES,
      chosen: (car) => climateOf(first(car)?.place),
      apply: (car, id) => (id === "pick" ? car : placed(car, 0, id)),
    },
    shore: {
      number: 3, short: "Sea", title: "How near the sea was it kept?", answers: SHORE,
      chosen: (car) => first(car)?.shore ?? null,
      apply: (car, id) => withLife(car, 0, { shore: id }),
    },
    kept: {
      number: 4, short: "Kept", title: "How was it kept there?", answers: KEPT,
      chosen: (car) => first(car)?.kept ?? null,
      apply: (car, id) => withLife(car, 0, { kept: id }),
    },
    standard: {
      number: 5, short: "Standard", title: "How good should it come out?",
      answers: [
        { id: "driver", text: "Driver standard", more: "Sound, smart, to be used" },
        { id: "show", text: "Show standard", more: "Straight, polished, tidy underneath" },
        { id: "concours", text: "Concours standard", more: "As the factory made it, to be judged" },
        { id: "not_sure", text: "Not sure", more: "Show me all three" },
      ],
      chosen: (car) => car.standard ?? null,
      apply: (car, id) => ({ ...car, standard: id }),
    },
    road: {
      number: 6, short: "On the road", title: "For how many years was it driven regularly?",
      answers: [
        { id: "under_10", text: "Fewer than 10", means: "Fewer than 10 years on the road" },
        { id: "10_to_20", text: "10 to 20", means: "10 to 20 years on the road" },
        { id: "20_to_35", text: "20 to 35", means: "20 to 35 years on the road" },
        { id: "over_35", text: "More than 35", means: "More than 35 years on the road" }, NOT_SURE,
      ],
      chosen: (car) => first(car)?.road_years ?? null,
      apply: (car, id) => withLife(car, 0, { road_years: id }),
    },
    elsewhere: {
      number: 7, short: "Elsewhere", title: "Did it live anywhere else for five years or more?",
      answers: [{ id: "no", text: "No", means: "One place only" }, { id: "yes", text: "Yes" }, NOT_SURE],
      chosen: (car, said) => ((car.life?.length ?? 0) > 1 ? "yes" : said ?? null),
      apply: (car, id) => (id === "yes" ? car : withoutEarlierPlaces(car)),
    },
    else_place: { number: 7, short: "Elsewhere", title: "Where was that?", answers: CLIMATES, draft: "place" },
    else_kept: { number: 7, short: "Elsewhere", title: "How was it kept there?", answers: KEPT, draft: "kept" },
    else_years: { number: 7, short: "Elsewhere", title: "For how many years?" },
    earlier: {
      number: 8, short: "Earlier work", title: "Has the body been repaired or restored before?",
      answers: [
        { id: "not_known_of", text: "Not that I know of", means: "No known repairs" }, { id: "patched_here_and_there", text: "Patched here and there" },
        { id: "stripped_and_restored", text: "Stripped and restored" }, NOT_SURE,
      ],
      chosen: (car) => car.earlier_work ?? null,
      apply: (car, id) => ({ ...car, earlier_work: id }),
    },
    seen: { number: 9, short: "Seen", title: "What can you see?", hint: "Only what you have looked at. Leave the rest alone: not looked at is no answer, and never counts as good." },
    holes: { number: 9, short: "Holes", title: "Is any of these a hole right through?" },
    scope: {
      number: 10, short: "Work", title: "What should we do?",
      answers: [
        { id: "whole_body", text: "The whole body", more: "Inside, outside and under" },
        { id: "outside_only", text: "Outside only", more: "Leave underneath alone" },
        { id: "metalwork_only", text: "Metalwork only", more: "To primer" },
        { id: "not_sure", text: "Not sure", more: "Taken as the whole body" },
      ],
      chosen: (car, said) => said ?? car.scope ?? null,
      apply: (car, id) => ({ ...car, scope: id === "not_sure" ? "whole_body" : id }),
    },
  };
}

/** A new place: what was said about the sea belonged to the old one. */
export function placed(car, index, place) {
  const { shore, ...life } = car.life?.[index] ?? {};
  const all = [...(car.life ?? [])];
  all[index] = { ...life, place };
  return { ...car, life: all };
}
