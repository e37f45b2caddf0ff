using System.CommandLine;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary>The flags that say how the bench is wired: bench.json, and single flags over it.</summary>
public sealed class BenchFlags
{
    private readonly Option<string?> _bench = new("--bench")
    {
        Description = "The bench's wiring, a bench.json. Every flag below overrides it.",
        HelpName = "FILE",
    };
    private readonly Option<string?> _meter = new("--meter")
    {
        Description = "The meter: a VISA resource name such as TCPIP::192.0.2.10::5025::SOCKET or ASRL/dev/ttyUSB0::INSTR.",
        HelpName = "RESOURCE",
    };
    private readonly Option<string?> _driver = new("--meter-driver")
    {
        Description = "The meter's driver. Left out: scpi-dmm, which most SCPI multimeters follow.",
        HelpName = "NAME",
    };
    private readonly Option<string?> _drivers = DriverFolderCommand.Drivers();
    private readonly Option<double?> _gain = new("--amplifier-gain")
    {
        Description = "Voltage gain of a front-end amplifier before the meter. Left out: 1, no amplifier.",
        HelpName = "GAIN",
    };
    private readonly Option<string?> _fixture = new("--fixture")
    {
        Description = "The relay fixture: a VISA resource name.",
        HelpName = "RESOURCE",
    };
    private readonly Option<string?> _calibration = new("--calibration")
    {
        Description = "The fixture's calibration file.",
        HelpName = "FILE",
    };
    private readonly Option<double?> _settle = new("--settle")
    {
        Description = "Seconds to wait for the meter after each change. Left out: what its driver says.",
        HelpName = "SECONDS",
    };

    /// <summary>Adds the flags to a command.</summary>
    public void AddTo(Command command)
    {
        // The same limits as in bench.json.
        FlagRange.Require(_gain, 0.01, 10000);
        FlagRange.Require(_settle, 0, 60);
        foreach (var option in new Option[] { _bench, _meter, _driver, _drivers, _gain, _fixture, _calibration, _settle })
            command.Add(option);
    }

    /// <summary>The wiring that the flags make.</summary>
    /// <exception cref="Core.BenchFaultException">bench.json cannot be used.</exception>
    public BenchWiring Read(ParseResult parsed)
    {
        var wiring = parsed.GetValue(_bench) is { } file ? BenchWiringFile.Read(file) : new();
        return wiring with
        {
            Meter = parsed.GetValue(_meter) ?? wiring.Meter,
            MeterDriver = parsed.GetValue(_driver) ?? wiring.MeterDriver,
            Drivers = parsed.GetValue(_drivers) ?? wiring.Drivers,
            AmplifierGain = parsed.GetValue(_gain) ?? wiring.AmplifierGain,
            Fixture = parsed.GetValue(_fixture) ?? wiring.Fixture,
            Calibration = parsed.GetValue(_calibration) ?? wiring.Calibration,
            SettleSeconds = parsed.GetValue(_settle) ?? wiring.SettleSeconds,
        };
    }
}
