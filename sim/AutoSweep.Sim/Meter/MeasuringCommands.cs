using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Meter;

/// <summary>CONFigure, MEASure, INITiate, READ, FETCh, ABORt, *TRG and the system commands of the meter.</summary>
internal static class MeasuringCommands
{
    private static readonly NumberRange Volts = new(0, 750, 0, "V");
    private static readonly NumberRange Hertz = new(3, 3e5, 20, "HZ");
    private static readonly NumberRange Resolution = new(0, 1e6, 0);

    public static void Add(CommandTable table, MeterInstrument meter) => table
        .Command("CONFigure[:SCALar]:VOLTage:AC", arguments => meter.Configure(AcVolts(arguments)))
        .Command("CONFigure[:SCALar]:FREQuency", arguments => meter.Configure(Frequency(arguments)))
        .Query("CONFigure?", arguments => arguments.None(() => Configuration(meter.Settings)))
        .Add("MEASure[:SCALar]:VOLTage:AC?", (arguments, interrupted) => MeasureAsync(meter, AcVolts(arguments), interrupted))
        .Add("MEASure[:SCALar]:FREQuency?", (arguments, interrupted) => MeasureAsync(meter, Frequency(arguments), interrupted))
        .Add("READ?", (arguments, interrupted) => arguments.None(() => meter.ReadAsync(interrupted)))
        .Add("FETCh?", (arguments, interrupted) => arguments.None(() => meter.Measurement.FetchAsync(interrupted)))
        .Command("INITiate[:IMMediate]", arguments => arguments.None(() => meter.Measurement.Start(meter.Settings)))
        .Command("ABORt", arguments => arguments.None(meter.Measurement.Abort))
        .Command("*TRG", arguments => arguments.None(() => meter.Measurement.Trigger(meter.Settings)))
        .Command("SYSTem:BEEPer[:IMMediate]", arguments =>
        {
            // Frequency, time and volume may be given (SCPI-1999 volume 2, 21.2); this beeper has one sound.
            arguments.Expect(0, 3);
            meter.Beep();
        })
        .Command("DISPlay[:WINDow]:TEXT[:DATA]", arguments => meter.Display(arguments.Expect(1, 1).Quoted(0)))
        .Command("DISPlay[:WINDow]:TEXT:CLEar", arguments => arguments.None(() => meter.Display("")))
        .Command("SYSTem:REMote", arguments => arguments.None())
        .Command("SYSTem:RWLock", arguments => arguments.None())
        .Command("SYSTem:LOCal", arguments => arguments.None());

    private static ValueTask<string?> MeasureAsync(MeterInstrument meter, MeterSettings settings, CancellationToken interrupted)
    {
        meter.Configure(settings);
        return meter.ReadAsync(interrupted);
    }

    private static MeterSettings AcVolts(Arguments arguments)
    {
        var settings = MeterSettings.Configured(MeterFunction.AcVolts);
        CheckResolution(arguments);
        return arguments.Count == 0 || IsDefault(arguments)
            ? settings
            : settings with { AutoRange = false, Range = MeterSettings.RangeFor(arguments.Number(0, Volts)) };
    }

    private static MeterSettings Frequency(Arguments arguments)
    {
        CheckResolution(arguments);
        if (arguments.Count > 0 && !IsDefault(arguments)) arguments.Number(0, Hertz);
        return MeterSettings.Configured(MeterFunction.Frequency);
    }

    private static void CheckResolution(Arguments arguments)
    {
        if (arguments.Expect(0, 2).Count == 2) arguments.Number(1, Resolution);
    }

    private static bool IsDefault(Arguments arguments) => arguments.Raw(0).ToUpperInvariant() is "DEF" or "DEFAULT" or "AUTO";

    private static string Configuration(MeterSettings settings) => settings.Function == MeterFunction.Frequency
        ? "\"FREQ +3.00000000E+00,+3.00000000E-05\""
        : $"\"VOLT:AC {Arguments.Nr3(settings.Range)},{Arguments.Nr3(settings.Range * 1e-6)}\"";
}
