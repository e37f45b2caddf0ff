using AutoSweep.Core;

namespace AutoSweep.Sim.Benches;

/// <summary>What the JSON format alone cannot say about a bench.</summary>
internal static class BenchCheck
{
    /// <exception cref="BenchFaultException">A value is out of its range or names what is not there.</exception>
    public static BenchDefinition Checked(BenchDefinition bench, string path)
    {
        var numbers = bench.Outputs.Select(output => output.Number).ToHashSet();
        Expect(bench.Format == 1, path, $"format {bench.Format}", "format 1");
        Expect(numbers.Count == bench.Outputs.Count, path, "an output number twice", "every output once");
        Expect(bench.Fixture.Relays.Count is > 0 and <= 32, path, $"{bench.Fixture.Relays.Count} relays", "1 to 32 relays");
        Expect(bench.FrontEnd.Gain > 0, path, $"front-end gain {bench.FrontEnd.Gain:G6}", "a gain above 0");
        foreach (var output in bench.Outputs)
            CheckOutput(output, numbers, path);
        foreach (var step in bench.Hands.Survey.Concat(bench.Hands.Sweep))
            Expect(numbers.Contains(step.Output), path, $"a hands step for output {step.Output}", "an output of the bench");
        foreach (var fault in bench.Faults)
            Expect(fault.Output == 0 || numbers.Contains(fault.Output), path, $"a fault at output {fault.Output}", "an output of the bench");
        Expect(bench.Parts.All(part => part.Picofarads > 0), path, "a part without capacitance", "above 0 pF");
        return bench;
    }

    private static void CheckOutput(OutputDefinition output, HashSet<int> numbers, string path)
    {
        Expect(output.Filter is null == output.Aged is null, path,
            $"output {output.Number} with only one of filter and aged", "both or neither");
        Expect(output.Source is { Ohms: > 0, Henries: > 0 } && output.Filter is null or { Ohms: > 0, Henries: > 0 }, path,
            $"output {output.Number} with a coil without resistance or inductance", "ohms and henries above 0");
        Expect(output.Filter is not { CouplingFactor: < 0 or >= 1 }, path,
            $"output {output.Number} with coupling {output.Filter?.CouplingFactor:G6}", "0 to below 1");
        Expect(output.Rod is null or { GapMillimetres: > 0, DecibelsPerMillimetre: > 0, BacklashMillimetres: >= 0 }, path,
            $"output {output.Number} with a magnet rod that has no gap or no slope", "both above 0");
        Expect(output.Crosstalk is null || numbers.Contains(output.Crosstalk.FromOutput), path,
            $"output {output.Number} with crosstalk from output {output.Crosstalk?.FromOutput}", "an output of the bench");
    }

    private static void Expect(bool holds, string path, string found, string expected)
    {
        if (holds) return;
        throw new BenchFaultException(BenchFault.BadFile, $"{path}: {found}", expected, "Correct the bench file.");
    }
}
