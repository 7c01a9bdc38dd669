// The questions as data: five before the range, the rest after it. Each says what is asked,
// the answers as button texts, what an answer writes into the car, and which answer a car
// already has.

import {
  photosOf,
  placed,
  withBodies,
  withEarlierWork,
  withHitPlace,
  withLife,
  withOption,
  withoutEarlierPlaces,
} from "./car.ts";
import type { Body, CarFile, Life } from "./carfile.ts";
import { CLIMATES, choice, climateOf, KEPT, NOT_SURE, type Questions, SHORE } from "./question.ts";
import type { OpenedReply } from "./replies.ts";

const TWO_DOORS: Body[] = ["two_door_unitary", "hardtop_on_frame"];
const EVERY_BODY: Body[] = [
  ...TWO_DOORS,
  "four_door_saloon",
  "convertible_unitary",
  "open_two_seater",
  "pickup",
];

function bodyOf(car: CarFile): string | null {
  const [body] = car.bodies ?? [];
  if (!body) return null;
  if (car.bodies && car.bodies.length > 2) return "not_sure";
  return TWO_DOORS.includes(body) ? "two_door" : body;
}

/** A car has two bodies also before this question was answered. */
function frameOf(car: CarFile, said?: string): string | null {
  if (!car.bodies || car.bodies.length === 2) return said ?? null;
  return car.bodies[0] === "hardtop_on_frame" ? "frame" : "shell";
}

/** The questions in the words of the shop's country. */
export function questions(words: OpenedReply["words"]): Questions {
  const uk = words === "uk";
  const frame = uk ? "chassis" : "frame";
  const coat = uk ? "underseal" : "undercoat";
  // British failures on body structure fit the temperate place, and by far not the humid
  // one: House of Lords, written answer of 21 April 1977, column 268, on the new test.
  const temperate = uk
    ? "Most of Britain, away from the coast, counts as temperate."
    : "Roads that are salted only now and then count as temperate.";
  const first = (car: CarFile): Life | undefined => car.life?.[0];
  return {
    body: choice({
      number: 1,
      short: "Body",
      title: "Which is nearest to your car?",
      answers: [
        { id: "two_door", text: "Two-door with a fixed roof", drawing: "two_door_unitary" },
        { id: "four_door_saloon", text: "Four-door", drawing: "four_door_saloon" },
        { id: "convertible_unitary", text: "Convertible with back seats", drawing: "convertible_unitary" },
        { id: "open_two_seater", text: "Open two-seater", drawing: "open_two_seater" },
        { id: "pickup", text: "Pickup", drawing: "pickup" },
        {
          id: "none",
          text: "None of these",
          more: `A van, a wooden frame, ${uk ? "aluminium or glass-fibre" : "aluminum or fiberglass"}`,
        },
        NOT_SURE,
      ],
      chosen: bodyOf,
      apply(car, id) {
        if (id === "none") return car;
        if (id === "not_sure") return withBodies(car, EVERY_BODY);
        if (id !== "two_door") return withBodies(car, [id]);
        return bodyOf(car) === "two_door" ? car : withBodies(car, TWO_DOORS);
      },
    }),
    frame: choice({
      number: 1,
      short: "Built",
      title: `Does the body bolt to a separate ${frame}?`,
      hint: `Look in under the edge below the door, from beside the car. Never put any part of yourself under a car that stands on a jack.`,
      drawing: "under_the_door",
      answers: [
        { id: "frame", text: `Yes: a separate ${frame} runs below the floor` },
        { id: "shell", text: "No, it is one shell" },
        NOT_SURE,
      ],
      chosen: frameOf,
      apply: (car, id) =>
        withBodies(
          car,
          id === "frame" ? ["hardtop_on_frame"] : id === "shell" ? ["two_door_unitary"] : TWO_DOORS,
        ),
    }),
    fenders: choice({
      number: 1,
      short: "Bed",
      title: uk
        ? "Do the rear wings stand outside the load bed?"
        : "Do the rear fenders stand outside the bed?",
      answers: [
        { id: "yes", text: "Yes, a narrow bed between them" },
        { id: "no", text: "No, the bed sides are smooth" },
        NOT_SURE,
      ],
      chosen: (car, said) => said ?? (car.options?.includes("outside_fenders") ? "yes" : null),
      apply: (car, id) => withOption(car, "outside_fenders", id === "yes"),
    }),
    year: { number: 2, short: "Made", title: "What year was it made?" },
    place: choice({
      number: 3,
      short: "Where",
      title: "Where has it spent most of its life?",
      hint: temperate,
      answers: CLIMATES,
      chosen: (car) => climateOf(first(car)?.place),
      apply: (car, id) => (id === "pick" ? car : placed(car, 0, id)),
    }),
    shore: choice({
      number: 3,
      short: "Sea",
      title: "How near the sea was it kept?",
      answers: SHORE,
      chosen: (car) => first(car)?.shore ?? null,
      apply: (car, id) => withLife(car, 0, { shore: id }),
    }),
    kept: choice({
      number: 4,
      short: "Kept",
      title: "How was it kept there?",
      answers: KEPT,
      chosen: (car) => first(car)?.kept ?? null,
      apply: (car, id) => withLife(car, 0, { kept: id }),
    }),
    standard: choice({
      number: 5,
      short: "Standard",
      title: "How good should it come out?",
      answers: [
        { id: "driver", text: "Driver standard", more: "Sound, smart, to be used" },
        { id: "show", text: "Show standard", more: "Straight, polished, tidy underneath" },
        { id: "concours", text: "Concours standard", more: "As the factory made it, to be judged" },
        { id: "not_sure", text: "Not sure", more: "Show me all three" },
      ],
      chosen: (car) => car.standard ?? null,
      apply: (car, id) => ({ ...car, standard: id }),
    }),
    covered: choice({
      number: 6,
      short: uk ? "New paint or underseal" : "New paint or undercoat",
      title: `Has it been painted or ${coat}ed in the last ten years or so?`,
      hint: `Fresh paint and ${coat} hide rust, so a check that finds nothing says less.`,
      answers: [
        { id: "yes", text: "Yes", means: `Painted or ${coat}ed in the last ten years` },
        { id: "no", text: "No", means: `Not painted or ${coat}ed in the last ten years` },
        NOT_SURE,
      ],
      chosen: (car) => car.covered ?? null,
      apply: (car, id) => ({ ...car, covered: id }),
    }),
    road: choice({
      number: 7,
      short: "On the road",
      title: "For how many years was it driven regularly?",
      answers: [
        { id: "under_10", text: "Fewer than 10", means: "Fewer than 10 years on the road" },
        { id: "10_to_20", text: "10 to 20", means: "10 to 20 years on the road" },
        { id: "20_to_35", text: "20 to 35", means: "20 to 35 years on the road" },
        { id: "over_35", text: "More than 35", means: "More than 35 years on the road" },
        NOT_SURE,
      ],
      chosen: (car) => first(car)?.road_years ?? null,
      apply: (car, id) => withLife(car, 0, { road_years: id }),
    }),
    elsewhere: choice({
      number: 8,
      short: "Elsewhere",
      title: "Did it live anywhere else for five years or more?",
      answers: [{ id: "no", text: "No", means: "One place only" }, { id: "yes", text: "Yes" }, NOT_SURE],
      chosen: (car, said) => ((car.life?.length ?? 0) > 1 ? "yes" : (said ?? null)),
      apply: (car, id) => (id === "yes" ? car : withoutEarlierPlaces(car)),
    }),
    else_place: {
      number: 8,
      short: "Elsewhere",
      title: "Where was that?",
      hint: temperate,
      answers: CLIMATES,
      draft: "place",
    },
    else_kept: {
      number: 8,
      short: "Elsewhere",
      title: "How was it kept there?",
      answers: KEPT,
      draft: "kept",
    },
    else_years: { number: 8, short: "Elsewhere", title: "For how many years?" },
    earlier: choice({
      number: 9,
      short: "Earlier work",
      title: "Has the body been repaired or restored before?",
      answers: [
        { id: "not_known_of", text: "Not that I know of", means: "No known repairs" },
        { id: "patched_here_and_there", text: "Patched here and there" },
        { id: "stripped_and_restored", text: "Stripped and restored" },
        NOT_SURE,
      ],
      chosen: (car) => car.earlier_work ?? null,
      apply: withEarlierWork,
    }),
    earlier_year: { number: 9, short: "Year of that work", title: "When was that?" },
    earlier_proof: choice({
      number: 9,
      short: "Photographs",
      title: "Do you have photographs or bills of that work?",
      answers: [{ id: "yes", text: "Yes" }, { id: "no", text: "No" }, NOT_SURE],
      chosen: (car, said) => (photosOf(car).length > 0 ? "yes" : (said ?? null)),
      apply: (car) => car,
    }),
    earlier_parts: {
      number: 9,
      short: "Photographs or bills",
      title: "Which parts do they show renewed or patched?",
      hint: "Mark only those parts. A picture of bare metal says far more than a line on a bill.",
    },
    hit: choice({
      number: 10,
      short: "Accidents",
      title: "Has it been hit hard, that you know of?",
      hint: "Hard means that metal behind the panels was bent. Few owners know a car's first thirty years.",
      answers: [
        { id: "not_that_i_know", text: "Not that I know", means: "Not hit hard, as far as we know" },
        { id: "lightly", text: "Lightly", means: "Hit lightly" },
        { id: "hard", text: "Hard", means: "Hit hard" },
        NOT_SURE,
      ],
      chosen: (car) => car.hit?.answer ?? null,
      apply: (car, id) => (car.hit?.answer === id ? car : { ...car, hit: { answer: id } }),
    }),
    hit_where: choice({
      number: 10,
      short: "Where it was hit",
      title: "Where?",
      hint: "The place that was hit hardest.",
      answers: [
        { id: "front", text: "Front" },
        { id: "rear", text: "Rear" },
        { id: "left", text: "Left side" },
        { id: "right", text: "Right side" },
        { id: "roof", text: "Roof" },
        NOT_SURE,
      ],
      chosen: (car, said) => car.hit?.where?.[0] ?? said ?? null,
      apply: withHitPlace,
    }),
    seen: {
      number: 11,
      short: "Seen",
      title: "What can you see?",
      hint: "Skip what you haven't checked. We don't assume that it's good.",
    },
    holes: {
      number: 11,
      short: "Holes",
      title: "A hole you can see: light or a finger goes through",
      hint: "Mark each part where you can see one. Blisters and loose rust are not enough.",
    },
    all_there: choice({
      number: 12,
      short: "Parts there",
      title: "Is it all there?",
      hint: "Parts that are off the car but kept with it count as there. What is missing has to be found, bought or made.",
      answers: [
        { id: "all_there", text: "All there" },
        { id: "some_parts_off", text: "Some parts off", more: "One or two may be gone" },
        { id: "in_pieces", text: "In pieces", more: "Taken apart, in boxes" },
        NOT_SURE,
      ],
      chosen: (car) => car.all_there ?? null,
      apply: (car, id) => ({ ...car, all_there: id }),
    }),
    scope: choice({
      number: 13,
      short: "Work",
      title: "What should we do?",
      answers: [
        { id: "whole_body", text: "The whole body", more: "Inside, outside and under" },
        { id: "outside_only", text: "Outside only", more: "Leave underneath alone" },
        { id: "metalwork_only", text: "Metalwork only", more: "To primer" },
        { id: "not_sure", text: "Not sure", more: "Taken as the whole body" },
      ],
      chosen: (car, said) => said ?? car.scope ?? null,
      apply: (car, id) => ({ ...car, scope: id === "not_sure" ? "whole_body" : id }),
    }),
    another_body: choice({
      number: 11,
      short: "This body or another",
      title: "Must it be this very body?",
      answers: [
        { id: "this_one_only", text: "This one only" },
        { id: "another_is_all_right", text: "Another is all right" },
        NOT_SURE,
      ],
      chosen: (car) => car.another_body ?? null,
      apply: (car, id) => ({ ...car, another_body: id }),
    }),
  };
}
