package rungwise.dosing.urgent.rescue;

import java.time.Instant;
import rungwise.quantities.Concentration;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Why something is not reckoned, prepared or proposed. No signature and no reason lifts one. */
public sealed interface Refusal {

  /** Where it belongs. */
  Asked asked();

  /** What was given, what is accepted and what to do. */
  String words();

  /** A ratio such as "1:1000", or a percentage: a slip in reading it is one of ten times. */
  record Ratio(Asked asked, String typed) implements Refusal {
    @Override
    public String words() {
      return quoted(typed)
          + " is a ratio or a percentage, which is misread by ten times: read "
          + asked.words()
          + " as a mass per mL, such as "
          + asked.example()
          + ".";
    }
  }

  /** A number without a unit. */
  record NoUnit(Asked asked, String typed) implements Refusal {
    @Override
    public String words() {
      return quoted(typed)
          + " has no unit, and mg and mcg differ a thousand times: write "
          + asked.words()
          + " with its unit, such as "
          + asked.example()
          + ".";
    }
  }

  /** A volume where a mass of drug is asked for. */
  record VolumeForMass(Asked asked, String typed) implements Refusal {
    @Override
    public String words() {
      return quoted(typed)
          + " is a volume, and how much drug is asked for: write "
          + asked.words()
          + " as a mass, such as "
          + asked.example()
          + ".";
    }
  }

  /** A mass where a strength is asked for: nobody knows in how much. */
  record MassWithoutVolume(Asked asked, String typed) implements Refusal {
    @Override
    public String words() {
      return quoted(typed)
          + " does not say in how much: write "
          + asked.words()
          + " per mL, such as "
          + asked.example()
          + ".";
    }
  }

  /**
   * Anything else that is not read.
   *
   * @param why what was given, what is accepted and what to do
   */
  record NotRead(Asked asked, String typed, String why) implements Refusal {
    @Override
    public String words() {
      return why;
    }
  }

  /** It is unusual, and was typed once. */
  record TypeAgain(Asked asked, String shown) implements Refusal {
    @Override
    public String words() {
      return shown
          + " is unusual for "
          + asked.words()
          + ": look at it once more and type it a second time in the field below it.";
    }
  }

  /** It was typed twice, and not the same. */
  record TwoDiffer(Asked asked, String first, String second) implements Refusal {
    @Override
    public String words() {
      return first
          + " and then "
          + second
          + " were typed for "
          + asked.words()
          + ": both must be the same. Look at the label or the report and type both anew.";
    }
  }

  /** What is made by dilution is weaker than what it is made of. */
  record WantedNotBelowStock(Concentration wanted, Concentration stock) implements Refusal {
    @Override
    public Asked asked() {
      return Asked.WANTED;
    }

    @Override
    public String words() {
      return StrengthWords.of(wanted)
          + " is not below the stock's "
          + StrengthWords.of(stock)
          + ", and saline only makes it weaker: want a lower strength, or read the stock's label"
          + " again.";
    }
  }

  /** Stronger than any published scheme gives. */
  record WantedAboveMost(Concentration wanted, Concentration most) implements Refusal {
    @Override
    public Asked asked() {
      return Asked.WANTED;
    }

    @Override
    public String words() {
      return StrengthWords.of(wanted)
          + " is above "
          + StrengthWords.of(most)
          + ", the strongest that is published: want less.";
    }
  }

  /** Weaker than any published scheme gives, mostly a zero that was left out. */
  record WantedBelowLeast(Concentration wanted, Concentration least) implements Refusal {
    @Override
    public Asked asked() {
      return Asked.WANTED;
    }

    @Override
    public String words() {
      return StrengthWords.of(wanted)
          + " is below "
          + StrengthWords.of(least)
          + ", the weakest that is published: want more.";
    }
  }

  /** One ampoule in 10 mL and out of that syringe into him: ten times the usual strength. */
  record OneAmpouleShortcut(Concentration wanted, Concentration most) implements Refusal {
    @Override
    public Asked asked() {
      return Asked.WANTED;
    }

    @Override
    public String words() {
      return StrengthWords.of(wanted)
          + " is what one ampoule in 10 mL holds, and it is diluted once more before it is given:"
          + " prepare at most "
          + StrengthWords.of(most)
          + ", in two steps.";
    }
  }

  /** A stock that is too strong, or of no published strength, to be given as it is. */
  record UndilutedStock(Concentration stock, Concentration least, Concentration most)
      implements Refusal {
    @Override
    public Asked asked() {
      return Asked.STOCK;
    }

    @Override
    public String words() {
      return "Stock of "
          + StrengthWords.of(stock)
          + " is never given as it is: only a label of "
          + StrengthWords.of(least)
          + " to "
          + StrengthWords.of(most)
          + " is ready to use. "
          + (stock.compareTo(most) > 0 ? "Dilute it." : "Take another stock.");
    }
  }

  /** No syringe has a line there, or none draws it well enough. */
  record NotDrawable(Asked asked, ExactVolume part) implements Refusal {
    @Override
    public String words() {
      return "No usual syringe draws "
          + part
          + " well enough, and nothing is rounded: change "
          + asked.words()
          + ", such as to "
          + asked.example()
          + ".";
    }
  }

  /** No first step leads to a second of which every part is drawn well. */
  record NoTwoSteps(Concentration stock, Concentration wanted, Volume total) implements Refusal {
    @Override
    public Asked asked() {
      return Asked.STEPS;
    }

    @Override
    public String words() {
      return "No two steps from "
          + StrengthWords.of(stock)
          + " to "
          + total
          + " of "
          + StrengthWords.of(wanted)
          + " have parts that a syringe draws well: change the total volume, or ask for one step.";
    }
  }

  /** A dose of nothing. */
  record NoDose() implements Refusal {
    @Override
    public Asked asked() {
      return Asked.DOSE;
    }

    @Override
    public String words() {
      return "0 mcg is no dose: write how much is to be given, such as "
          + Asked.DOSE.example()
          + ".";
    }
  }

  /** The dose before is too recent. Whichever side it went into, it counts. */
  record TooSoon(Instant last, Instant notBefore, TimeSpan least) implements Refusal {
    @Override
    public Asked asked() {
      return Asked.DOSE;
    }

    @Override
    public String words() {
      return "The dose before, into either side, is less than "
          + least
          + " ago: wait until "
          + least
          + " have passed and measure blood pressure and pulse.";
    }
  }

  private static String quoted(String typed) {
    return "\"" + typed + "\"";
  }
}
