using System.CommandLine.Parsing;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Commands;

/// <summary>Reads a typed capacitance from the command line.</summary>
internal static class CapacitanceOption
{
    /// <summary>The value to the nearest picofarad; refused where it cannot be understood or is not from 1 pF to 1 mF.</summary>
    public static Capacitance? Parse(ArgumentResult result)
    {
        var text = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value;
        if (TypedCapacitance.OfPart(text) is { } value)
            return value;
        result.AddError($"'{text}' is not a capacitance; expected {TypedCapacitance.Expected}.");
        return null;
    }
}
