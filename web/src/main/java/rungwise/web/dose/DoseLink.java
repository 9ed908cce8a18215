package rungwise.web.dose;

import org.springframework.web.util.UriComponentsBuilder;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Volume;

/** Another question with the same preparation, as a link. */
public record DoseLink(String path, String words) {

  /** Asks for a volume on a syringe. */
  static DoseLink volumeOn(DoseForm form, Volume volume, Barrel barrel, String words) {
    return to(form, DoseForm.BY_VOLUME, volume.millilitresText(), barrel, words);
  }

  /** Asks the same of another syringe. */
  static DoseLink sameOn(DoseForm form, Barrel barrel, String words) {
    return to(form, form.said(DoseForm.BY), form.said(DoseForm.AMOUNT), barrel, words);
  }

  private static DoseLink to(DoseForm form, String by, String amount, Barrel barrel, String words) {
    String path =
        UriComponentsBuilder.fromPath("/dose")
            .queryParam(DoseForm.PREPARATION, "{preparation}")
            .queryParam(DoseForm.BARREL, "{barrel}")
            .queryParam(DoseForm.BY, "{by}")
            .queryParam(DoseForm.AMOUNT, "{amount}")
            .encode()
            .buildAndExpand(form.said(DoseForm.PREPARATION), barrel.token(), by, amount)
            .toUriString();
    return new DoseLink(path, words);
  }
}
