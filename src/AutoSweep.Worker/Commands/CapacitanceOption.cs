using System.CommandLine.Parsing;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Commands;

/// <summary>Reads a typed capacitance from the command line.</summary>
internal static class CapacitanceOption
{
    public static Capacitance? Parse(ArgumentResult result)
    {
        var text = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value;
        if (CapacitanceText.Parse(text) is { } value)
            return value;
        result.AddError($"'{text}' is not a capacitance; expected {CapacitanceText.Syntax}.");
        return null;
    }
}
