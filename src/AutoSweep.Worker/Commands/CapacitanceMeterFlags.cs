using System.CommandLine;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary>The flags that say where the capacitance meter is.</summary>
public sealed class CapacitanceMeterFlags
{
    private readonly Option<string?> _meter = new("--capacitance-meter")
    {
        Description = "The capacitance meter: a VISA resource name. Without one every value is typed.",
        HelpName = "RESOURCE",
    };
    private readonly Option<string?> _driver = new("--capacitance-meter-driver")
    {
        Description = "The capacitance meter's driver. Left out: scpi-lcr, which most SCPI LCR meters follow.",
        HelpName = "NAME",
    };
    private readonly Option<string?> _drivers = DriverFolderCommand.Drivers();
    private readonly Option<double?> _leads = new("--capacitance-meter-leads")
    {
        Description = "Picofarads of its leads, where the meter itself does not correct them. Left out: 0.",
        HelpName = "PF",
    };

    /// <summary>Adds the flags to a command.</summary>
    public void AddTo(Command command)
    {
        FlagRange.Require(_leads, 0, 10000);
        foreach (var option in new Option[] { _meter, _driver, _drivers, _leads })
            command.Add(option);
    }

    /// <summary>The wiring with what the flags say over it.</summary>
    public BenchWiring Over(BenchWiring wiring, ParseResult parsed) => wiring with
    {
        CapacitanceMeter = parsed.GetValue(_meter) ?? wiring.CapacitanceMeter,
        CapacitanceMeterDriver = parsed.GetValue(_driver) ?? wiring.CapacitanceMeterDriver,
        Drivers = parsed.GetValue(_drivers) ?? wiring.Drivers,
        CapacitanceMeterLeadsPicofarads = parsed.GetValue(_leads) ?? wiring.CapacitanceMeterLeadsPicofarads,
    };
}
