package rungwise.clinic;

import java.util.List;

/** Invented names, each of two words, as its language writes them. */
public final class InventedNames {

  private InventedNames() {}

  public static final List<String> OF_MANY_SCRIPTS =
      List.of(
          "Corvin Adeyemi",
          "José Ñandú",
          "Nguyễn Sơn",
          "Ægir Þórsson",
          "O’Brien Sample",
          "Łukasz Żółw",
          "Иван Примеров",
          "Γιώργος Δείγμας",
          "Արամ Նմուշ",
          "გიორგი ნიმუში",
          "דוד דוגמה",
          "سامي مثال",
          "می‌خواهم نمونه",
          "राम नमूना",
          "ক্ষিতি নমুনা",
          "ਰਾਮ ਨਮੂਨਾ",
          "રામ નમૂનો",
          "ராம் மாதிரி",
          "రామ్ నమూనా",
          "ರಾಮ್ ಮಾದರಿ",
          "രാമൻ മാതൃക",
          "ශ්‍රී ආදර්ශ",
          "สมชาย ตัวอย่าง",
          "ສົມ ຕົວຢ່າງ",
          "မောင် နမူနာ",
          "សុខ គំរូ",
          "山田 見本",
          "やまだ ミホン",
          "王 样本",
          "김 견본",
          "ሳሙኤል ናሙና",
          "ᏣᎳᎩ ᎠᎹ");
}
