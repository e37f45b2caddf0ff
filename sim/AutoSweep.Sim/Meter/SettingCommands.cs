using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Meter;

/// <summary>The SENSe, TRIGger and SAMPle commands of the meter, each with its query.</summary>
internal static class SettingCommands
{
    private static readonly NumberRange Volts = new(0.1, 750, 0.1, "V");
    private static readonly NumberRange Filter = new(3, 3e5, 20, "HZ");
    private static readonly NumberRange Gate = new(0.01, 1, 0.1, "S");
    private static readonly NumberRange Delay = new(0, 3600, 0, "S");
    private static readonly NumberRange Many = new(1, 50000, 1);

    public static void Add(CommandTable table, MeterInstrument meter)
    {
        AddFunction(table, meter);
        AddNumber(table, meter, "[SENSe:]VOLTage:AC:RANGe[:UPPer]", Volts, s => s.Range,
            (s, value) => s with { Range = MeterSettings.RangeFor(value), AutoRange = false });
        AddNumber(table, meter, "[SENSe:]VOLTage:AC:BANDwidth", Filter, s => s.FilterHertz,
            (s, value) => s with { FilterHertz = MeterSettings.FilterFor(value) });
        AddNumber(table, meter, "[SENSe:]DETector:BANDwidth", Filter, s => s.FilterHertz,
            (s, value) => s with { FilterHertz = MeterSettings.FilterFor(value) });
        AddNumber(table, meter, "[SENSe:]FREQuency:VOLTage:RANGe[:UPPer]", Volts, s => s.FrequencyRange,
            (s, value) => s with { FrequencyRange = MeterSettings.RangeFor(value), FrequencyAutoRange = false });
        AddNumber(table, meter, "[SENSe:]FREQuency:APERture", Gate, s => s.GateSeconds,
            (s, value) => s with { GateSeconds = MeterSettings.Apertures.First(gate => gate >= value) });
        AddSwitch(table, meter, "[SENSe:]VOLTage:AC:RANGe:AUTO", s => s.AutoRange, (s, on) => s with { AutoRange = on });
        AddSwitch(table, meter, "[SENSe:]FREQuency:VOLTage:RANGe:AUTO", s => s.FrequencyAutoRange,
            (s, on) => s with { FrequencyAutoRange = on });
        AddTrigger(table, meter);
    }

    private static void AddFunction(CommandTable table, MeterInstrument meter) => table
        .Command("[SENSe:]FUNCtion[:ON]", arguments =>
        {
            var function = arguments.Expect(1, 1).Quoted(0).ToUpperInvariant() switch
            {
                "VOLT:AC" or "VOLTAGE:AC" => MeterFunction.AcVolts,
                "FREQ" or "FREQUENCY" => MeterFunction.Frequency,
                _ => throw new ScpiErrorException(ScpiError.IllegalValue),
            };
            meter.Apply(meter.Settings with { Function = function });
        })
        .Query("[SENSe:]FUNCtion[:ON]?", arguments =>
            arguments.None(() => meter.Settings.Function == MeterFunction.Frequency ? "\"FREQ\"" : "\"VOLT:AC\""));

    private static void AddTrigger(CommandTable table, MeterInstrument meter)
    {
        AddNumber(table, meter, "TRIGger:COUNt", Many, s => s.Triggers, (s, value) => s with { Triggers = (int)value }, whole: true);
        AddNumber(table, meter, "SAMPle:COUNt", Many, s => s.Samples, (s, value) => s with { Samples = (int)value }, whole: true);
        AddNumber(table, meter, "TRIGger:DELay", Delay, s => s.DelayInForce, (s, value) => s with { DelaySeconds = value });
        AddSwitch(table, meter, "TRIGger:DELay:AUTO", s => s.DelaySeconds is null,
            (s, on) => s with { DelaySeconds = on ? null : s.DelayInForce });
        table.Command("TRIGger:SOURce", arguments => meter.Apply(meter.Settings with
        {
            Trigger = arguments.Expect(1, 1).Word(0, "IMMediate", "BUS", "EXTernal") switch
            {
                "IMM" => TriggerSource.Immediate,
                "BUS" => TriggerSource.Bus,
                _ => TriggerSource.External,
            },
        }));
        table.Query("TRIGger:SOURce?", arguments => arguments.None(() => meter.Settings.Trigger switch
        {
            TriggerSource.Immediate => "IMM",
            TriggerSource.Bus => "BUS",
            _ => "EXT",
        }));
    }

    private static void AddNumber(
        CommandTable table, MeterInstrument meter, string pattern, NumberRange range, Func<MeterSettings, double> get,
        Func<MeterSettings, double, MeterSettings> set, bool whole = false) => table
        .Command(pattern, arguments => meter.Apply(set(meter.Settings, arguments.Expect(1, 1).Number(0, range))))
        .Query(pattern + "?", arguments =>
        {
            var value = arguments.Limit(range) ?? get(meter.Settings);
            return whole ? Arguments.Nr1((long)value) : Arguments.Nr3(value);
        });

    private static void AddSwitch(
        CommandTable table, MeterInstrument meter, string pattern, Func<MeterSettings, bool> get,
        Func<MeterSettings, bool, MeterSettings> set) => table
        .Command(pattern, arguments => meter.Apply(set(meter.Settings, arguments.Expect(1, 1).Boolean(0))))
        .Query(pattern + "?", arguments => arguments.None(() => get(meter.Settings) ? "1" : "0"));
}
