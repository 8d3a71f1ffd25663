package mainsgap.cli;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import mainsgap.transfer.claim.DecisionRule;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a decision rule from an option's word. */
final class DecisionRuleWord implements ITypeConverter<DecisionRule> {
  @Override
  public DecisionRule convert(String word) {
    return DecisionRule.ofWord(word)
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "'"
                        + word
                        + "' is no decision rule: choose "
                        + Stream.of(DecisionRule.values())
                            .map(DecisionRule::word)
                            .collect(Collectors.joining(", "))));
  }
}
