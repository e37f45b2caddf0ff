using System.CommandLine;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Calibration;

namespace AutoSweep.Worker.Commands;

/// <summary>The flags that the commands on the fixture have in common.</summary>
public sealed class FixtureFlags
{
    private readonly CapacitanceMeterFlags _capacitanceMeter = new();
    private readonly Option<string?> _bench = new("--bench")
    {
        Description = "The bench's wiring, a bench.json. Every flag below overrides it.",
        HelpName = "FILE",
    };
    private readonly Option<string?> _fixture = new("--fixture")
    {
        Description = "The relay fixture: a VISA resource name.",
        HelpName = "RESOURCE",
    };
    private readonly Option<double?> _accuracy = new("--meter-accuracy")
    {
        Description = "The meter's accuracy at these values, in per cent of reading, from its data sheet. Left out: its driver's figure; "
            + "of typed values 0.5, a handheld meter's.",
        HelpName = "PERCENT",
    };
    private readonly Option<double> _rate = new("--clock-rate")
    {
        Description = "For a simulated bench only: how many times faster than real its clock runs.",
        HelpName = "N",
        DefaultValueFactory = _ => 1,
    };

    /// <summary>Adds the flags to a command.</summary>
    public void AddTo(Command command)
    {
        FlagRange.Require(_rate, 1, 1000);
        FlagRange.Require(_accuracy, 0, 20);
        foreach (var option in new Option[] { _bench, _fixture })
            command.Add(option);
        _capacitanceMeter.AddTo(command);
        command.Add(_accuracy);
        command.Add(_rate);
    }

    /// <summary>The bench that the flags name.</summary>
    /// <exception cref="Core.BenchFaultException">bench.json cannot be used.</exception>
    public FixtureBenchPlan Read(ParseResult parsed)
    {
        var wiring = parsed.GetValue(_bench) is { } file ? BenchWiringFile.Read(file) : new();
        wiring = wiring with { Fixture = parsed.GetValue(_fixture) ?? wiring.Fixture };
        return new(_capacitanceMeter.Over(wiring, parsed), parsed.GetValue(_accuracy), parsed.GetValue(_rate));
    }
}
