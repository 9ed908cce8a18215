package rungwise.clinic.fitting;

/** What became of the fit that was started last. Nothing of it is kept anywhere else. */
public sealed interface FitState {

  /** None was started since the server was. */
  record None() implements FitState {}

  record Running(FitProgress progress) implements FitState {}

  record Done(FitResult result) implements FitState {}

  /** It was stopped, and left nothing behind. */
  record Stopped() implements FitState {}

  /** It could not be carried through; the log says why. */
  record Failed() implements FitState {}
}
