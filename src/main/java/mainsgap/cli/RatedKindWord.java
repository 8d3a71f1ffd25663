package mainsgap.cli;

import java.util.Locale;
import mainsgap.transfer.claim.DeclaredClaim;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** What a declared time is said to be, on the command line. */
final class RatedKindWord implements ITypeConverter<DeclaredClaim.Kind> {

  @Override
  public DeclaredClaim.Kind convert(String word) {
    for (DeclaredClaim.Kind kind : DeclaredClaim.Kind.values()) {
      if (kind.name().toLowerCase(Locale.ROOT).equals(word)) {
        return kind;
      }
    }
    throw new TypeConversionException("'" + word + "' is none of maximum, typical, unstated");
  }
}
