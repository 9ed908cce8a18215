package rungwise.app.server;

import rungwise.clinic.call.Calls;
import rungwise.clinic.call.Rescues;
import rungwise.clinic.handout.Sheets;
import rungwise.clinic.joining.Joining;
import rungwise.clinic.reaching.Reaching;
import rungwise.clinic.room.Room;
import rungwise.clinic.running.Running;
import rungwise.clinic.screening.Screenings;
import rungwise.clinic.standing.Acknowledging;
import rungwise.clinic.start.Correcting;
import rungwise.clinic.start.Starting;
import rungwise.clinic.supply.ClinicVials;
import rungwise.clinic.supply.Vials;
import rungwise.clinic.takeover.TakingOver;
import rungwise.clinic.teaching.Teaching;
import rungwise.clinic.titration.Lifting;
import rungwise.clinic.titration.Titration;
import rungwise.clinic.today.DayList;

/** The use cases about courses, which share their ports. */
record CourseCases(
    Starting starting,
    Screenings screenings,
    Vials vials,
    ClinicVials clinicVials,
    Room room,
    Teaching teaching,
    Titration titration,
    Lifting lifting,
    Calls calls,
    Rescues rescues,
    Reaching reaching,
    Running running,
    TakingOver takingOver,
    Joining joining,
    Correcting correcting,
    Acknowledging acknowledging,
    Sheets sheets,
    DayList dayList) {}
