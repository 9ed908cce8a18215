package rungwise.dosing.source;

import java.util.Arrays;
import java.util.Optional;

/** The published texts that the numbers here come from. docs/sources.md lists the same. */
public enum Citation {
  US_VIAL_LABEL(
      "us-vial-label",
      "US prescribing information, alprostadil powder for intracavernosal injection (vial)"),
  US_VIAL_LABEL_OLDER(
      "us-vial-label-older",
      "US prescribing information, alprostadil powder (vial), an older revision"),
  US_SYRINGE_LABEL(
      "us-syringe-label", "US prescribing information, alprostadil dual-chamber syringe"),
  US_CARTRIDGE_LABEL(
      "us-cartridge-label", "US prescribing information, alprostadil alfadex cartridge"),
  UK_ALFADEX_SMPC(
      "uk-alfadex-smpc", "UK summary of product characteristics, alprostadil alfadex, 4.2"),
  UK_MONOGRAPH_2023(
      "uk-monograph-2023", "UK medicines monograph, alprostadil injection, 2 Feb 2023"),
  EU_CORE_SAFETY_2012(
      "eu-core-safety-2012", "EU core safety profile, alprostadil, UK/H/PSUR/0020/002, 2012"),
  US_PHENTOLAMINE_LABEL(
      "us-phentolamine-label", "US prescribing information, phentolamine mesylate for injection"),
  PHENYLEPHRINE_LABEL("phenylephrine-label", "US prescribing information, phenylephrine injection"),
  EAU_SEXUAL_HEALTH(
      "eau-sexual-health", "EAU guidelines on sexual and reproductive health, injection section"),
  CARDIAC_RISK_2016("cardiac-risk-2016", "Nat Rev Dis Primers 2016;2:16003, Table 1, PMC5027992"),
  CARDIAC_RISK_EAU_2013(
      "cardiac-risk-eau-2013", "Princeton III and EAU 2013, as tabulated in a secondary table"),
  RHODEN_2002("rhoden-2002", "Rhoden, Int J Impot Res 2002;14:245"),
  ALBAUGH_2006("albaugh-2006", "Albaugh, Urol Nurs 2006;26:449-453"),
  EAU_PRIAPISM_2015("eau-priapism-2015", "EAU pocket guideline, priapism, 2015"),
  AUA_PRIAPISM_2021(
      "aua-priapism-2021", "AUA/SMSNA guideline, acute ischemic priapism, J Urol 2021;206:1114"),
  BMJ_PRIAPISM("bmj-priapism", "BMJ Best Practice, priapism, criteria and prognosis"),
  EMEDICINE_PRIAPISM("emedicine-priapism", "eMedicine, priapism, article 115710"),
  MULHALL_2007("mulhall-2007", "Mulhall, J Sex Med 2007;4:1626, PMID 17888069"),
  ISO_8537_2007(
      "iso-8537-2007", "ISO 8537:2007, sterile single-use syringes for insulin, Table 1 and 9.2"),
  ISO_7886_1("iso-7886-1", "ISO 7886-1, sterile hypodermic syringes for single use, Table 1"),
  CASELLA_1993("casella-1993", "Casella, Pediatrics 1993;91:1155-1157"),
  GNANALINGHAM_1998("gnanalingham-1998", "Gnanalingham, Arch Dis Child 1998;79:59-62"),
  LTEIF_1999("lteif-1999", "Lteif and Schwenk, Diabetes Care 1999;22:137-140"),
  USP_797(
      "usp-797",
      "USP chapter 797, dates beyond use, and strength limits where a monograph gives none"),
  USP_797_OLDER("usp-797-older", "USP chapter 797, text of USP 28"),
  USP_STORAGE("usp-storage", "USP, definitions of storage, as commented"),
  USP_1151("usp-1151", "USP 29 chapter 1151, excess volume in injections"),
  STABILITY_2003("stability-2003", "Korean J Androl 2003;21(1):23-26"),
  YOUNGER_1986("younger-1986", "Younger and Szabo, Prostaglandins 1986;31:923-927"),
  DEAD_SPACE_STUDY(
      "dead-space-study", "study of syringe and needle dead space against ISO 7886-1:2018"),
  DEAD_SPACE_1986("dead-space-1986", "Diabetes Care 1986;9(1):23-25"),
  LOW_DEAD_SPACE("low-dead-space", "encyclopedia article on low dead space syringes"),
  USP_ALPROSTADIL("usp-alprostadil", "USP monograph, Alprostadil Injection"),
  MONTORSI_1993("montorsi-1993", "Montorsi, J Urol 1993;149:1291-1295"),
  BECHARA_1997("bechara-1997", "Bechara, J Urol 1997;157:2132"),
  BENNETT_1991("bennett-1991", "Bennett, J Urol 1991;146:1564"),
  JOINT_COMMISSION_2009("joint-commission-2009", "Joint Commission Do Not Use list, 5 Mar 2009"),
  ISMP_ABBREVIATIONS("ismp-abbreviations", "ISMP list of error-prone abbreviations"),
  FDA_DOSING_ALERT_2024(
      "fda-dosing-alert-2024",
      "FDA alert on dosing errors with compounded injectables, 26 Jul 2024"),
  PENNSYLVANIA_2004("pennsylvania-2004", "Pennsylvania PSRS advisory, 28 Oct 2004, Supplement 1"),
  PAPAVERINE_DRUG_RECORD(
      "papaverine-drug-record", "openFDA label record, papaverine hydrochloride, molar mass");

  private final String id;
  private final String reference;

  Citation(String id, String reference) {
    this.id = id;
    this.reference = reference;
  }

  /** The name by which protocols and documents cite it. */
  public String id() {
    return id;
  }

  /** Whether it is a label or a monograph of alprostadil alone, which says nothing of a mixture. */
  public boolean isOfAlprostadilAlone() {
    return switch (this) {
      case US_VIAL_LABEL,
          US_VIAL_LABEL_OLDER,
          US_SYRINGE_LABEL,
          US_CARTRIDGE_LABEL,
          UK_ALFADEX_SMPC,
          UK_MONOGRAPH_2023,
          EU_CORE_SAFETY_2012 ->
          true;
      default -> false;
    };
  }

  /** The text itself, so that a reader can find it. */
  public String reference() {
    return reference;
  }

  /** The citation of that id, if there is one. */
  public static Optional<Citation> of(String id) {
    return Arrays.stream(values()).filter(citation -> citation.id.equals(id)).findFirst();
  }
}
