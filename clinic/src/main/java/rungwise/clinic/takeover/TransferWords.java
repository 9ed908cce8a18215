package rungwise.clinic.takeover;

import rungwise.clinic.ClinicTime;
import rungwise.clinic.transfer.TransferWord;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;

/** What was told of a man who is taken over, in words. */
public final class TransferWords {

  private TransferWords() {}

  public static String of(TransferWord word) {
    return switch (word) {
      case TransferWord.Told told -> words(told);
      case TransferWord.Opened opened ->
          "Prescriber opens the schedule of "
              + opened.preparation()
              + " at "
              + opened.upTo()
              + ", as a part of the dose told from elsewhere";
    };
  }

  private static String words(TransferWord.Told told) {
    return "Taken over from "
        + told.from()
        + ", as told: "
        + told.drawn()
        + told.barrel().flatMap(Barrels::of).map(barrel -> mark(told, barrel)).orElse("")
        + " of "
        + told.preparation()
        + ", "
        + told.grade().words()
        + ", "
        + told.soft().words()
        + ". Last injection there: "
        + told.lastDay().map(ClinicTime::words).orElse("not known")
        + ". Known from "
        + told.by().words();
  }

  private static String mark(TransferWord.Told told, Barrel barrel) {
    return barrel.hasMarkAt(told.drawn()) ? " (" + barrel.markWords(told.drawn()) + ")" : "";
  }
}
