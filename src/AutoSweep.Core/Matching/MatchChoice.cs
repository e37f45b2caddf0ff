namespace AutoSweep.Core.Matching;

/// <summary>One way to serve an output.</summary>
/// <param name="Group">The output's place among the targets.</param>
/// <param name="Kind">What it stands for.</param>
/// <param name="Added">How many parts beside pinned ones.</param>
/// <param name="Places">The parts' places in the list of parts.</param>
/// <param name="MeanSquare">The expected square of the detuning in half-widths.</param>
internal sealed record MatchChoice(int Group, MatchChoiceKind Kind, int Added, IReadOnlyList<int> Places, double MeanSquare);
