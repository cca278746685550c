/** Generated from the doc comments of src/findings/rules. Do not edit. */
import type { CodeDoc } from './codeDoc.ts';

export const FINDING_DOCS: Readonly<Record<string, CodeDoc>> = {
  'not-assembled': {
    title: 'A rod, cable or fork cannot reach the lever it drives.',
    text: "Over the stretch of pedal travel that is named, no position of the driven lever keeps the part together: the rod is too short or too long for where its two arms stand, the cable pulls its pin beyond the housing end's reach, the fork passes its pin by. A real linkage locks or breaks where that stretch begins. What hangs on the lever has no value there and is not reported besides. Where the stretch begins at a dead centre within the travel, it is told beside that one (`toggle-opening`): what is left is mostly a rod of a length that reaches nowhere.",
    cure: 'Give the rod the length that it has as drawn, lengthen or shorten the arms until it reaches, or take less travel. For a cable and a fork no figure is offered: where they reach hangs on two places at once.',
  },
  'side-undecided': {
    title: 'A part is drawn exactly in line with the arm it drives.',
    text: 'From such a position the driven lever may go on either way, and the drawing does not say which. Nothing that hangs on it can be solved, so this is an error. A part that is drawn visibly to one side of the line is no such case.',
    cure: 'Draw the driven arm a little to the side on which it is to work.',
  },
  'toggle-opening': {
    title: 'Rod or cable comes in line with the arm it drives: the pedal can open the throttle no further.',
    text: 'The transmission angle is 0 there. All the force goes into the bearing of the driven lever and none turns it, so the foot comes up against something hard before the plates are open, and a worn joint may snap over to the other side. What only follows from it is told beside it and not as findings of their own: that the part reaches no further, that its angle runs through the limit to 0 there, that the shaft behind it never opens fully.',
    cure: 'Clock the driven arm so that it is nearest to square with the rod about the middle of its way, or take less travel.',
  },
  'toggle-returning': {
    title: 'Rod or cable comes in line with the arm that drives it: the return springs cannot push back through it.',
    text: 'The drive angle is 0 there. The throttle springs pull on the driving arm without turning it, so a throttle that has passed this place can stay open with the foot off. That is the most dangerous thing a linkage can do. What only follows from it is told beside it and not as findings of their own: that the drive angle runs through its limit to 0 there, that the levers behind turn back from there, that they never open fully.',
    cure: 'Clock the driving arm so that it does not reach the line of the rod, or take less travel.',
  },
  'transmission-angle': {
    title: 'Rod, cable or fork meets the driven arm too nearly in line.',
    text: "The transmission angle lies between the part and the arm it turns; at 90° all its force turns the arm, at 0° none does. The flatter it is, the more of the foot's force goes into the throttle shaft's bearings instead, and friction can hold the shaft where it stands. A warning comes under 40°, a textbook minimum from memory, an error under 25°: common practice, no source. Both can be set under `limits: {transmission: …}`. A stretch that runs to 0° is told with its dead centre (`toggle-opening`).",
    cure: 'Clock the driven arm so that it is nearer to square with the rod there, or take less travel.',
  },
  'drive-angle': {
    title: 'Rod, cable or fork leaves the driving arm too nearly in line.',
    text: 'The drive angle lies between the part and the arm that moves it. Going down, a flat one is welcome: it makes the throttle open softly. Coming back it is what the return springs push through, and near 0° friction in the driving lever is enough to hold the throttle. A warning comes under 20°, an error under 10°: common practice, no source. Both can be set under `limits: {drive: …}`. A stretch that runs to 0° is told with its dead centre (`toggle-returning`).',
    cure: 'Clock the driving arm so that it is nearer to square with the rod there, even if the throttle then opens less softly.',
  },
  'rod-end-tilt': {
    title: 'An end of a rod tilts further on its bolt than it can.',
    text: "A rod end or ball stud swivels a few degrees before its race meets the bolt's head; beyond that the rod bends, or the end works loose and drops off. The tilt is how far the rod leaves the plane square to the bolt. Where the rod's `ends` give `misalignment`, that is the limit, and passing it is an error. Else a warning comes by `limits: {misalignment: …}` or by their kind: rod ends from 12°, the lower end of the 12° to 18° that a trade article gives; ball studs from 15° and clevises from 1°, both common practice, no source.",
    cure: 'Bring the two pins into one plane, turn a bolt, or take ends that tilt more.',
  },
  'cable-lead': {
    title: 'The inner cable leaves its housing at an angle.',
    text: 'The lead is the angle between the inner and the way its housing end points. An inner that runs over the edge of its ferrule saws into it, frays, and one day a strand catches with the throttle open. A warning comes over 5°, an error over 10°: common practice, no source; both can be set under `limits: {lead: …}`. Where the file does not say which way a housing end points, it is taken to be aimed midway of all that the inner sweeps. A housing end within the drum that its inner runs to is an error too.',
    cure: 'Turn the housing end so that the inner runs straight out of it, or move it further off, so that the inner sweeps less. To move it takes two figures, and none is offered for that; where the file says which way it points, one of those figures is.',
  },
  'opening-missed': {
    title: 'The pedal is down and a shaft with plates is not fully open.',
    text: "The engine never gets all the air that the plates could pass. Full is the shaft's open stop, or, where it has none, 90° of plate less seat and idle. Short of it by 0.1° or less is taken as full, since of two shafts only one can touch its stop: common practice, no source. It is a warning, and an error where the shaft does not open at all; that nothing drives it is told as `not-driven`. Where it opens furthest at a dead centre on the way to it, that is what is told, with the shortfall beside it.",
    cure: 'Lengthen the driving arm, shorten the driven arm or take a smaller drum, or give the pedal more travel.',
  },
  'opening-early': {
    title: 'An open stop is met before the pedal lands.',
    text: "What is left of the pedal's travel stretches the cable; with no cable before it, the linkage takes the whole foot, and bends. Either way the next hard push ends at the throttle shaft instead of the pedal's own stop. Up to 2 mm of stretch is a note, more of it, or a linkage that takes the foot, a warning: common practice, no source.",
    cure: 'Let the pedal meet its own stop first: less pedal travel, a shorter driving arm, a longer driven arm or a larger drum.',
  },
  'held-open': {
    title: 'With the foot off, the throttle rests above its closed stop.',
    text: 'Springs press every lever closed until the first closed stop of those joined together is met; any other stays that much open. On a shaft with plates it is an error, since the engine will not come down to idle; on another lever a warning. Less than 0.001° is taken as closed: common practice, no source. A closed stop above 0 on a shaft with plates contradicts the drawing, in which the plates lie on their idle stop, and is an error too.',
    cure: 'Set the rod to the length at which both closed stops are met together.',
  },
  'closed-stop-passed': {
    title: 'Somewhere on the way a lever would stand below its closed stop.',
    text: 'The stop holds it there and the pedal still wants to move it: the linkage jams, or something bends. It comes from a lever that turns back so far that it passes the position in which it was drawn.',
    cure: "End the pedal's travel before the dead centre from which the lever turns back, or clock the driving arm so that it does not reach it.",
  },
  'plate-below-seat': {
    title: 'Plates would stand beyond their seat.',
    text: 'Closed by more than their idle opening they wedge in the bore and do not open again by themselves, or only with a jerk. It comes from a closed stop set below the idle position, or from a shaft that turns back past it.',
    cure: "Set the closed stop so that it is met before the plates touch the bore, at 0 where the plates are drawn on it; where the shaft turns back past its seat, end the pedal's travel before the dead centre that it turns back from.",
  },
  'plate-past-square': {
    title: 'Plates turn past 90° and close their bore again.',
    text: "A plate along the bore, 90° from square to it, is as open as it gets. Turned on, it leaves less air past again, and the pedal's last stretch takes power instead of giving it. As long as the shaft hides the plate nothing is lost, and it is a note; where the open area falls by more than 0.1 % of its greatest it is a warning. Up to 0.1° past 90° is taken as 90°. Both: common practice, no source.",
    cure: "Set the open stop at 90° less seat and idle, and give the pedal no more travel than reaches it. Where seat and idle alone come to 90°, they were measured from the bore's axis: seat counts from square to the bore, and idle from the seat.",
  },
  'slack-used-up': {
    title: 'A cable is tight with the foot off and holds the throttle open.',
    text: 'Where the closed stop lies below the drawn position, or a rod of another length lets the linkage close further than it is drawn, the driven end of the cable comes back by more than the cable has slack. The cable then takes the load that the stop should take, and the engine will not come down to idle. As the cable wears in or the engine rocks, it only gets worse. Where the cable has slack left with a rod as long as drawn, that rod is the cause and is told, at its length.',
    cure: 'Give the rod the length that it has as drawn; else give the cable more slack, or let the stop close the throttle where it is drawn.',
  },
  'opens-otherwise': {
    title: 'A lever is driven the other way than its `opens` says.',
    text: 'It would close as the pedal goes down. Nothing else that is said of its way is then worth reading, so nothing else is said. Most often one of the two is a slip of the pen: `opens` of the lever or the pedal, or `wraps` of a drum.',
    cure: 'Check `opens` of this lever, `wraps` of the drum and `opens` of the pedal.',
  },
  'turns-back': {
    title: 'A lever closes again while the pedal still goes down.',
    text: 'The arm that drives it has passed its dead centre. From there on, pressing further closes the throttle, and full throttle lies somewhere before the floor. It is told beside that dead centre (`toggle-returning`, or `change-point`) where that explains all of it, and is a finding of its own where it does not.',
    cure: 'Take less travel, or clock the driving arm back so that it does not reach its dead centre.',
  },
  'change-point': {
    title: 'The links of a four-bar all come to lie on one line, and may go on from there either way.',
    text: 'It happens where shortest and longest link together are exactly as long as the other two, as in a parallelogram: driven through that line the linkage may fold over and drive the shaft backwards. Which way it goes hangs on play and dirt. That both angles of the rod run to 0 there, that the return springs cannot push back through it and that the shaft turns back from there is told beside it.',
    cure: "End the pedal's travel before it, or change one length by a few tenths of a millimetre, so that shortest and longest together are shorter than the other two.",
  },
  'profile-left': {
    title: 'A drum with a profile turns beyond the openings that its profile describes.',
    text: 'There its radius is only taken as that of the nearest point, so what is shown for that stretch is a guess about metal that is not drawn.',
    cure: 'Give the profile points over the whole of the opening. No figure is offered: how the drum goes on there, only its drawing knows.',
  },
  'groove-left': {
    title: 'A drum turns further than its groove goes.',
    text: 'The cable climbs out of its seat, and the next time it may come down beside the drum, where it holds the throttle open.',
    cure: 'Carry the groove on to the greatest rotation or more, or take a larger drum.',
  },
  'slot-run-out': {
    title: 'A pin leaves its fork.',
    text: '`reach` says how near to its pivot and how far from it the fork can hold the pin. Beyond, the pin drops out of the open end or stands against the bottom, and the throttle is either free of the pedal or jammed.',
    cure: "Make the fork longer, or bring its pivot nearer to the middle of the pin's way.",
  },
  'rod-out-of-adjustment': {
    title: 'A rod is longer or shorter than its adjuster can make it.',
    text: 'The length that the file gives, or the one that the drawing asks for, lies beyond the ends of `adjust`. It cannot be set on the bench; forced, the thread has too few turns left to hold.',
    cure: "Bring the length within the adjuster's range, or make the rod with another one.",
  },
  'off-plane': {
    title: 'A place of two figures stands on a lever that otherwise lies off z = 0.',
    text: "Two figures mean z = 0. Where the lever's other places have a height, that is most often a figure forgotten, and the rod that goes there would be solved as a slanting one.",
    cure: 'Write the third figure. None is offered: at which height the place is, only the drawing knows.',
  },
  'movement-at-rest': {
    title: 'A movement of the engine opens or closes the throttle with the foot off.',
    text: 'Engines rock on their mounts. Where a housing end stands on the body and the shaft on the engine, or the other way round, the cable is pulled by the rocking itself: the idle speed wanders, and on a hard pull the throttle opens without the pedal. Up to 0.01° is taken as still: common practice, no source. So it is where a spring loses so much by it that friction then holds the shaft somewhere, which it does not otherwise.',
    cure: 'Fix housing end and shaft to the same thing, so that they move together, or give the cable more slack.',
  },
  'movement-at-full': {
    title: 'A movement of the engine changes how far the throttle opens at full pedal.',
    text: 'A note, since a few degrees at wide open cost little air. It is an error where the moved linkage cannot follow the pedal to the floor at all: then rocking on a hard pull strains the cable or tears a rod off. Up to 0.01° is taken as none: common practice, no source. What the linkage cannot do unmoved is not blamed on the movement.',
    cure: 'Fix housing end and shaft to the same thing, so that they move together.',
  },
  'no-return-spring': {
    title: 'No spring that counts as return can close the plates of a shaft.',
    text: 'Only springs on levers that rods, forks and couplings join to the shaft close it, and springs on what the shaft itself pulls. A cable never pushes: a spring on the pedal pulls the pedal back and leaves the plates open, and so it is before a one-way coupling. A spring inside a sensor, or another with `counts_as_return: false`, is not meant to do it. Formula SAE Rules 2024, IC.3.3.2, ask for return springs at the throttle body itself. A file that describes no springs at all is not held to it; it is told that closing was not checked.',
    cure: 'Put two return springs on the throttle shaft itself, or on a lever that a rod joins to it.',
  },
  'single-return-spring': {
    title: 'Only one spring that counts as return closes the plates of a shaft.',
    text: "Springs break, mostly at a hook, and their anchors come off. With one spring that is a throttle that stays where it is. Two are common practice, and student-formula rules ask for them: two or more return springs, located at the throttle body, of which a position sensor's spring is none (Formula SAE Rules 2024, IC.3.3.2), at least two springs (Formula Student Rules, CV1.5.2). Both were read in a copy of those rules. A spring that is slack, opens or passes its dead centre anywhere in the travel is no second one: left alone there it closes nothing. Nor is one that acts only across free play. Where the second turns a lever that carries a sensor and no plates, it is a note: that may be the sensor's own. Whether each of two closes it alone against friction is told by `closing-margin`.",
    cure: 'Put a second return spring on the shaft, so that either of them closes it alone. No figure is offered: what is missing is a spring.',
  },
  'closing-lost': {
    title: 'The springs leave nothing that closes a shaft with plates somewhere in the travel.',
    text: 'The closing torque is what all springs together bring to the shaft, friction left out. Where it falls to zero the plates stay where they are when the foot comes off; below zero they go on open by themselves. At rest it is what presses the plates on their idle stop. Levers that rods and couplings join lose it together and are told together. 0.001 N·mm or less counts as none.',
    cure: 'Give the springs more preload, or move the one that fails so that it still closes there.',
  },
  'closing-dips': {
    title: 'A shaft is closed less strongly somewhere on its way than at rest.',
    text: 'Springs that are wound or drawn out as the throttle opens close it the harder the further it stands open. Where the closing torque falls instead, by an arm that comes near the line of its spring or a lever that loses its hold, the throttle comes back from there with less than presses it on its stop, and friction finds it first. Under four fifths of what it is at rest it is a note, under half a warning: common practice, no source. Where one spring opens, passes its dead centre or is slack, or the linkage itself comes to a dead centre, only that is told.',
    cure: "Clock the spring's arm so that it is square to the spring nearer to full opening than to rest. A spring on another lever works through the linkage, whose hold on the shaft changes: one on the shaft itself does not dip. More preload of a torsion spring on the shaft makes the dip a smaller share of the whole. Of a spring's arm no figure is offered: clocking it changes the torque at rest too.",
  },
  'friction-lock': {
    title: 'Somewhere in the travel friction holds a shaft or the pedal, and the springs cannot bring it back.',
    text: "What closes it is set against all that rubs on the way: drag, bearings under their load, plates that the manifold's vacuum presses on their shaft, rod ends, forks, and the cables that it draws back. Where that is no less than the closing torque, the throttle stays open when the foot comes off. A lever between pedal and shaft that stays where it is holds the shaft by its cable. Of plates on a `bearing` without `vacuum`, 70 kPa are taken: common practice, no source.\n\nIt is looked at at 201 places of the pedal’s travel at least, and searched on from each that is lower than its neighbours, to where it is worst and to where it begins and ends; where all springs are wound about axes only if one place comes within twice the friction. Among these places are, in closed form, all at which an angle of a joint turns back, and all at which a spring between a fixed place and a pin begins, ends or passes its dead centre, with the middles between them: a dip that such a spring makes by itself is found however narrow it is. No more is proved. Where friction itself turns has no closed form, nor has what a spring between two turning pins does: a dip of theirs from over twice the friction down to it and up again, all between two neighbouring places, would be missed, and so would the deeper of two between them.",
    cure: 'Better bearings (needle rollers in the place of plain bushes), or stronger springs.',
  },
  'closing-margin': {
    title: 'With one spring off, little is left over the friction that holds a shaft or the pedal.',
    text: 'A spring breaks, and the others must still bring the throttle back. Each is taken off in turn, and what is left is set against all that rubs on the way (`friction-lock` says what that is), anywhere in the travel. Under twice the friction it is a warning, under the friction itself an error: common practice, no source; both can be set under `limits: {closing_margin: …}`. Grease stiffens in the cold and bushes run dry, so that friction is the least certain figure of the file. Where nothing closes once a spring is off, that is told of the spring (`single-return-spring`); where friction holds it with all springs on, only that is told. It is looked for as `friction-lock` is, where a place comes within twice the limit: what is found however narrow it is, and what is not proved, stands there.',
    cure: 'More preload of the springs that are left, or less friction. Where each of two springs alone is too weak, both need it.',
  },
  'failure-holds-open': {
    title: 'With one part lost, plates stay open that closed with it.',
    text: 'Each spring, rod, cable, slot pin and coupling is taken away in turn, wherever in the travel that happens, and what is left is asked whether it closes from there against friction. What a lost rod drove has only its own springs; where all of them hang on a lever before the rod, the shaft is loose. 49 CFR 571.124 S5.2 asks that a throttle returns when any one component is disconnected (read as the agency quotes it in part, in its letter nht75-2.28 of 18 July 1975), and so do Formula SAE Rules 2024, IC.3.3.3 (read). A lost spring is an error: springs are what breaks. A rod, cable, slot pin or coupling is a warning: a nut that is locked does not come off. Told once typing rests, by `pedal-to-plate check` and `return`. A spring that is the only one, or leaves too little over friction, is told by `single-return-spring` and `closing-margin` alone; a throttle that does not close with all its parts, by what keeps it open. A cable that seizes holds what it opens on every throttle, and is no finding.',
    cure: 'Put a return spring on the shaft of the plates itself.',
  },
  'spring-opens': {
    title: 'A spring turns its lever open instead of closing it.',
    text: 'Somewhere in the travel, or all the way, its torque goes with the foot and against the springs that close. A spring that counts as return and from whose lever a torque comes to plates must never do that: it is an error. On a pedal behind a cable, or where `counts_as_return: false` says that it is meant to help the foot, it is a warning. A spring that closes at first and opens past its dead centre is `spring-dead-centre`.',
    cure: 'Hang the spring on the other side of the pivot, or turn the way it is wound.',
  },
  'spring-dead-centre': {
    title: "A spring's line passes the axis of its lever within the travel: on the other side it opens the throttle.",
    text: "At its dead centre a spring turns the lever neither way; beyond it pulls the lever on open, harder with every degree. A throttle that was pushed past that place can stay there. It is an error for a spring that counts as return where a torque comes from its lever to plates, else a warning. The place is where the line of the spring meets the lever's axis, computed and not sampled.",
    cure: 'Clock the arm on which the spring hangs, or move its anchor, so that its line stays on one side of the pivot over the whole travel. Of the anchor no figure is offered: it takes two.',
  },
  'spring-slack': {
    title: 'A spring is slack over part of the travel: shorter, or for a compression spring longer, than without load.',
    text: 'There it closes nothing. Its hooks rattle in their holes or its end leaves its seat, it wears through or drops off, and what comes back of the pedal there is up to the other springs. A spring with initial tension takes hold with a jerk where it is drawn tight.',
    cure: 'Take a spring with a shorter free length, a longer one where it works in compression, or move its anchor.',
  },
  'spring-overstressed': {
    title: 'The wire of a spring is stressed more than it bears.',
    text: 'Over its limit held, the wire takes a set: the spring comes back weaker than it was wound, and with it the throttle. That is an error. Over the limit of a million strokes, where one is known of the wire, it is a warning: springs of that stress break in time, and the limit is of springs that come down to nothing at each stroke, which spares one that stays under preload. Both are shares of the least tensile strength of the wire, from tables of textbooks, partly from memory; they are of wire that is not shot-peened, neither hot nor rusty. An extension spring that takes a set is told as `spring-overextended`. Springs given by `rate` are not checked.',
    cure: 'Take more turns or a larger coil: both bend the wire less at the same angle. Less preload helps too. No figure is offered: what the spring must bring comes first.',
  },
  'spring-overextended': {
    title: 'An extension spring is drawn out so far that it takes a set.',
    text: 'Its coil or its hook then yields: it stays longer than it was, brings less, and its hook is where it breaks. The length is that at which the first of them comes to its limit: the twist of the coil, the bending of the loop of a full hook, and where `hook_bend` is given the twist where the wire leaves the coil. The limits are shares of the least tensile strength, from textbooks; those of extension springs were read on a page that cites them. A spring given by `rate` is not checked.',
    cure: 'Hang it on a shorter arm or nearer, or take a spring with more turns, which gives way further.',
  },
  'spring-coil-bind': {
    title: 'A compression spring is pressed together until its turns meet, or nearly.',
    text: "Turn on turn it is a stop: the linkage cannot go on, and something bends, which is an error. Where less than 15 % of its travel is left, a turn that lies unevenly meets its neighbour before the others, and the spring grows stiffer than its rate: a warning, by a clearance that Shigley's Mechanical Engineering Design gives (from memory). The solid length is `total_turns` times the wire; with ends that are not ground, count one turn more. Without `total_turns` it is not checked.",
    cure: 'Take a spring with fewer turns or thinner wire, or one that is longer and starts further away.',
  },
  'spring-binds-on-arbor': {
    title: 'The coil of a torsion spring winds itself tight on what stands in it, or nearly.',
    text: 'Wound up, the wire makes more turns of a smaller diameter. Once it lies on its arbor it gives way no more: it grips, drags as it comes back and can hold the throttle open. Where its inside comes down to the arbor it is an error; where it comes nearer than a tenth of itself, a warning: a clearance that spring makers recommend, from memory. The spring is taken to wind up as the throttle opens, and to be free of load where its torque is zero. Without `arbor` it is not checked.',
    cure: 'Take a thinner arbor, a larger coil, or more turns, which narrow less for the same angle. A sleeve in the place of a full shaft helps nothing: it is the outside that counts.',
  },
  'sensor-past-stop': {
    title: 'The throttle turns a sensor past its own stops.',
    text: 'A position sensor is no throttle stop: turned beyond what it bears it breaks, or it holds the throttle before it is open or before it is closed. The stops are those under `mechanical`; a rotor that just comes to one is not past it.',
    cure: 'Turn the sensor on its spindle, or take one that turns further.',
  },
  'sensor-past-range': {
    title: 'The rotor of a sensor turns past the range in which its signal follows it.',
    text: "Outside, the signal is held at its end: the throttle goes on and the engine's electronics see it stand still. A rotor that just comes to an end of its range stays within. Where it passes its own stops on that side, only that is told, as `sensor-past-stop`.",
    cure: 'Turn the sensor on its spindle, or take one with a greater range.',
  },
  'signal-turns-back': {
    title: 'The signal of a sensor goes back while the throttle still opens.',
    text: 'Over that stretch two openings give one signal, and the engine cannot be mapped by it. It comes from a sensor on a lever of its own that turns back, mostly because the arm on its spindle passes the line of its rod. A stretch in which the signal is held at an end of its range is `sensor-past-range`. Where it turns back at a dead centre of the arm that drives it, that is what is told, with the signal beside it.',
    cure: 'Clock the arm on the spindle nearer to square with its rod, or take a shorter arm that drives it.',
  },
  'signal-span': {
    title: "A sensor uses less than half of its signal's span.",
    text: 'What the tuner gets for a degree of throttle is then less than half of what the sensor could give, and noise counts for more than twice as much. Half of the span is common practice, no source. A sensor that is turned past its range or its stops is told of that alone, and one that hardly turns because the throttle does not open is not told of.',
    cure: 'Take a sensor with a smaller range, or turn it by more than the shaft, with a rod or gears between. The finding says which range uses half of the span; it is not written into the file, since another range is another sensor.',
  },
  'signal-in-fault-band': {
    title: "A sensor's signal at rest or at full pedal lies where electronics take it for a broken wire.",
    text: 'Electronics watch for signals that a sound sensor never gives, and shut the engine down or fall back to an emergency map when they see one. Formula SAE Rules 2024, IC.4.4.8, give a signal below 0.5 V or above 4.5 V as their example, read there; by those words exactly 0.5 V and 4.5 V are sound. The example is of sensors on 5 V: with a `supply` further than 0.25 V from that it is not checked. A signal that is held at an end of its range is told as `sensor-past-range` alone.',
    cure: 'Turn the sensor on its spindle so that both ends of the travel give a signal between 0.5 V and 4.5 V.',
  },
  'out-of-step': {
    title: 'Two shafts with plates do not open together.',
    text: 'Every barrel should get the same air. Near idle a tenth of a degree is a good part of the whole opening, and the engine idles unevenly and stumbles as it comes off idle; further up half a degree is hardly felt. Each shaft is compared with that of the first plates in the file. More than 0.1° apart at rest or below 5° of opening (of both in the mean), or 0.5° above, is a warning; more than 0.5° at rest an error: common practice, no source. `limits: {step: …}` replaces both figures, the one below and the one above 5°. The difference in air is of open area, relative to the mean of both, and is told of plates of one size only. Where plates of one size have another seat or idle, they differ in air at the same opening: at rest and below 5° that is held against the same limits, as the opening that would make it. A shaft that a stage drives (a coupling with `lag` or `one_way`, a rod with `lost`) is out of step on purpose: that is a note.',
    cure: 'Set the rod between the shafts, or to each of them, until both rest on their stops together, and clock their arms alike.',
  },
  'touches-keep-out': {
    title: 'A lever, rod, cable or spring reaches into a keep-out.',
    text: "What stands there stops the throttle, or the throttle saws at it. Looked at are the arms of a lever as broad as its `width`, its round drums, its `outline`, rods as broad as their `width`, inners of cables between housing end and pin or drum as thick as their `diameter`, and extension and compression springs as thick as the coil of their `wire`, over the whole travel, seen along z and on the layer of the keep-out: the least gap is found to half a micron, and not sampled. The depth is the least shift that would part the two; of an outline that stands in somewhere, or a keep-out that does, it is that of the deepest two convex pieces, and may be less than the whole. A spring is taken to be as thick as its coil to its very ends, so that what touches it is a warning.\n\nA lever that turns about another direction than z, and what is joined to it, is held against the keep-outs that say by `from` and `to` where along z they stand, in space and whatever their layer: its arms as round bars as thick as they are broad, so that a gap is never told greater than it is. What turns about z goes by layers alone, whatever `from` and `to` say. The tilted lever's drums and outline, whose thickness the file does not give, keep-outs without both ends, and parts without a width are not checked.",
    cure: 'Shorten or clock the arm, lead the rod another way, or move what stands there.',
  },
  'keep-out-clearance': {
    title: 'A lever, rod, cable or spring comes nearer to a keep-out than its `clearance` allows.',
    text: 'Engines rock on their mounts, rods bow and bushes wear: what misses by little on the drawing touches on the road. The limit is the `clearance` of the keep-out. What is looked at and how is told under `touches-keep-out`.',
    cure: 'A narrower or shorter arm, another clocking, or another way for the rod.',
  },
  'parts-touch': {
    title: 'Two levers on one layer reach into each other, or a rod into a lever or rod that it is not joined to.',
    text: 'They jam, or rattle and wear. Looked at are arms as broad as the `width` of their lever, round drums, outlines, and rods as broad as their `width`, over the whole travel, seen along z. Levers on different layers pass each other. Levers about one axis sit beside each other on it, the pin of a slot lies in its fork, and a rod beside the levers that it joins: these are left out. The format gives a rod no layer: it is taken to lie on that of the levers that it joins, and because it may pass beside what it seems to touch, that is a warning only; between two layers it is not checked.',
    cure: 'Bring the two on different layers, or further from each other.',
  },
  'tolerance-fails-requirement': {
    title: 'Within its tolerances the linkage may not do what the file requires.',
    text: 'With every toleranced dimension in its middle the line of `require` is met, and with all of them against it at once it is not. It is a warning where as much as the root of the sum of squares is enough for that, so that about one build in a thousand may miss it where each tolerance is three standard deviations (common practice, no source); a note where it takes all of them at once. Each dimension is taken to both of its ends, and the line is decided anew with all of them at the worse one. Lines that speak of what acts, such as the effort, and play of pins are left to `pedal-to-plate tolerance`, which builds at random. It is told once typing rests.',
    cure: 'Hold the dimension that is named first tighter, or make it one that is set after assembly; else ask for less.',
  },
  'free-on-bound': {
    title: 'A value that `tune` leaves free stands on one of its bounds.',
    text: 'A search that comes to a bound would have gone on had it been let: a curve nearer to the wanted one may lie beyond it. Where the bound is a stock length or the room that there is, nothing is wrong with standing on it, so it is a note. Nearer to a bound than a ten-thousandth of the way between both counts as on it: common practice, no source.',
    cure: 'Widen the bound if there is room, and tune again.',
  },
  'not-told-apart': {
    title: 'The readings of the built car cannot tell two of the dimensions that they are to tell from each other.',
    text: 'Each reading that the file holds says how it would change with each dimension named in `fit`. Where only a sum, a difference or another combination of two shows, a fit finds that combination and leaves each of them as its tolerance has it, or as drawn. That is a warning. Where they are told, and hardly from each other, so that their errors go together by more than 0.95 of 1 (common practice, no source), it is a note. It is worked out at the dimensions of the file, once typing rests; readings in a CSV file are left to `pedal-to-plate fit`.',
    cure: 'Take all but one of them out of `fit`, or read something that moves with one of them alone.',
  },
};
