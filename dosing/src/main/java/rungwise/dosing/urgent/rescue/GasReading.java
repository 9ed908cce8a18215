package rungwise.dosing.urgent.rescue;

import java.util.List;

/** What a corporal blood gas says. It never says that nothing needs to be done. */
public sealed interface GasReading {

  /** How many criteria there are: oxygen, carbon dioxide, pH. */
  int CRITERIA = 3;

  /** All three criteria of an ischaemic one are met. */
  record Ischaemic() implements GasReading {}

  /** All three criteria of a non-ischaemic one are met. */
  record NonIschaemic() implements GasReading {}

  /**
   * Neither: it is treated as ischaemic until that is excluded.
   *
   * @param ischaemic the criteria of an ischaemic one that are met, fewer than all
   * @param nonIschaemic the criteria of a non-ischaemic one that are met, fewer than all
   */
  record Indeterminate(List<Asked> ischaemic, List<Asked> nonIschaemic) implements GasReading {
    public Indeterminate {
      ischaemic = List.copyOf(ischaemic);
      nonIschaemic = List.copyOf(nonIschaemic);
    }

    /** Whether part of it speaks for flowing blood and part does not: the sample may be wrong. */
    public boolean isInconsistent() {
      return !nonIschaemic.isEmpty();
    }
  }

  /** It is not read. */
  record Refused(List<Refusal> why) implements GasReading {
    public Refused {
      why = List.copyOf(why);
    }
  }
}
