package rungwise.clinic.elsewhere;

import rungwise.clinic.ClinicTime;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;

/** What was told of a man who is taken over, in words. */
public final class ElsewhereWords {

  private ElsewhereWords() {}

  public static String of(ElsewhereWord word) {
    return switch (word) {
      case ElsewhereWord.Told told -> words(told);
      case ElsewhereWord.Joined joined ->
          joined.leads()
              ? "Another course of the same man is joined with this one, in which he is treated"
              : "Joined with another course of the same man, in which he is treated";
      case ElsewhereWord.Parted parted ->
          "No longer joined with another course; what was read of it goes on counting";
      case ElsewhereWord.Opened opened ->
          "Prescriber opens the schedule of "
              + opened.preparation()
              + " at "
              + opened.upTo()
              + ", as a part of the dose told from elsewhere";
    };
  }

  private static String words(ElsewhereWord.Told told) {
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

  private static String mark(ElsewhereWord.Told told, Barrel barrel) {
    return barrel.hasMarkAt(told.drawn()) ? " (" + barrel.markWords(told.drawn()) + ")" : "";
  }
}
