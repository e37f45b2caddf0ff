using System.CommandLine;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Terminal;

namespace AutoSweep.Worker.Commands;

/// <summary>The flags of the commands that measure parts.</summary>
public sealed class PartsFlags
{
    // A handheld meter's, where a person types what it shows (common practice, no source).
    private const double TypedAccuracyPercent = 0.5;

    private readonly CapacitanceMeterFlags _meter = new();
    private readonly Option<string?> _bench = new("--bench")
    {
        Description = "The bench's wiring, a bench.json. Every flag below overrides it.",
        HelpName = "FILE",
    };
    private readonly Option<double> _accuracy = new("--typed-accuracy")
    {
        Description = "Accuracy of the meter from which values are typed, in per cent of reading.",
        HelpName = "PERCENT",
        DefaultValueFactory = _ => TypedAccuracyPercent,
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
        command.Add(_bench);
        _meter.AddTo(command);
        command.Add(_accuracy);
        command.Add(_rate);
    }

    /// <summary>The meter that the flags name, open; without one, a person who types.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <param name="words">Takes typed lines that are words and no values.</param>
    /// <exception cref="Core.BenchFaultException">bench.json cannot be used, or the meter cannot be reached.</exception>
    public Task<PartBench> OpenAsync(ParseResult parsed, CancellationToken cancellationToken, Func<string, bool>? words = null)
    {
        var wiring = parsed.GetValue(_bench) is { } file ? BenchWiringFile.Read(file) : new();
        return PartBench.OpenAsync(_meter.Over(wiring, parsed), parsed.GetValue(_accuracy) / 100, parsed.GetValue(_rate), GapScreen.Lines, cancellationToken, words);
    }
}
