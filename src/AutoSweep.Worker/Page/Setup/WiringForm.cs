using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>The wiring of a bench as a person chooses and types it.</summary>
public sealed class WiringForm
{
    // PATH_MAX of Linux; other systems end earlier.
    private const int LongestPath = 4096;

    // What the form does not show is kept as it was.
    private BenchWiring _before = new();

    /// <summary>Whether a person reads the level meter.</summary>
    public bool ReadByEye { get; set; }

    /// <summary>The meter's resource name.</summary>
    public string Meter { get; set; } = "";

    /// <summary>The meter's driver.</summary>
    public string MeterDriver { get; set; } = new BenchWiring().MeterDriver;

    /// <summary>The amplifier's gain.</summary>
    public string Gain { get; set; } = "1";

    /// <summary>Seconds for the detector; empty for the driver's figure.</summary>
    public string Settle { get; set; } = "";

    /// <summary>The meter that is read by eye.</summary>
    public EyeFields Eye { get; private set; } = new();

    /// <summary>Whether a person dials the box.</summary>
    public bool DialledByHand { get; set; }

    /// <summary>The fixture's resource name.</summary>
    public string Fixture { get; set; } = "";

    /// <summary>The calibration file's path; empty for none.</summary>
    public string Calibration { get; set; } = "";

    /// <summary>The box that is dialled by hand.</summary>
    public BoxFields Box { get; private set; } = BoxFields.Usual();

    /// <summary>The capacitance meter's resource name; empty where values are typed.</summary>
    public string CapacitanceMeter { get; set; } = "";

    /// <summary>The capacitance meter's driver.</summary>
    public string CapacitanceMeterDriver { get; set; } = new BenchWiring().CapacitanceMeterDriver;

    /// <summary>Picofarads of its leads.</summary>
    public string Leads { get; set; } = "0";

    /// <summary>The form of a wiring.</summary>
    public static WiringForm Of(BenchWiring wiring) => new()
    {
        _before = wiring,
        ReadByEye = wiring.IsReadByEye,
        Meter = wiring.IsReadByEye ? "" : wiring.Meter ?? "",
        MeterDriver = wiring.MeterDriver,
        Gain = TypedField.Shown(wiring.AmplifierGain),
        Settle = TypedField.Shown(wiring.SettleSeconds),
        Eye = EyeFields.Of(wiring.Eye),
        DialledByHand = wiring.IsDialledByHand,
        Fixture = wiring.IsDialledByHand ? "" : wiring.Fixture ?? "",
        Calibration = wiring.Calibration ?? "",
        Box = wiring.Box is { } box ? BoxFields.Of(box) : BoxFields.Usual(),
        CapacitanceMeter = wiring.CapacitanceMeter ?? "",
        CapacitanceMeterDriver = wiring.CapacitanceMeterDriver,
        Leads = TypedField.Shown(wiring.CapacitanceMeterLeadsPicofarads),
    };

    /// <summary>Takes an instrument that was found.</summary>
    public void Take(InstrumentUse use)
    {
        switch (use.Role)
        {
            case InstrumentRole.Meter:
                (ReadByEye, Meter, MeterDriver) = (false, use.Resource, use.Driver ?? MeterDriver);
                break;
            case InstrumentRole.Fixture:
                (DialledByHand, Fixture) = (false, use.Resource);
                break;
            default:
                (CapacitanceMeter, CapacitanceMeterDriver) = (use.Resource, use.Driver ?? CapacitanceMeterDriver);
                break;
        }
    }

    /// <summary>The wiring.</summary>
    /// <exception cref="BenchFaultException">A field cannot be understood, the meter is missing, or two instruments have one address.</exception>
    public BenchWiring Read()
    {
        var wiring = _before with
        {
            Meter = ReadByEye ? BenchWiring.ByEye : Address(Meter, "Meter") ?? throw NoMeter(),
            MeterDriver = MeterDriver,
            AmplifierGain = TypedField.NumberOrNone(Gain, "Amplifier gain", 0.01, 10_000) ?? 1,
            SettleSeconds = TypedField.NumberOrNone(Settle, "Settle time", 0, 60),
            Eye = Eye.Read(),
            Fixture = DialledByHand ? BenchWiring.ByHand : Address(Fixture, "Fixture"),
            Calibration = DialledByHand ? null : TypedField.TextOrNone(Calibration, "Calibration", LongestPath),
            Box = DialledByHand ? Box.Read() : _before.Box,
            CapacitanceMeter = Address(CapacitanceMeter, "Capacitance meter"),
            CapacitanceMeterDriver = CapacitanceMeterDriver,
            CapacitanceMeterLeadsPicofarads = TypedField.NumberOrNone(Leads, "Leads of the capacitance meter", 0, 10_000) ?? 0,
        };
        RequireOwnPorts(wiring);
        return wiring;
    }

    private static string? Address(string typed, string field)
    {
        if (TypedField.TextOrNone(typed, field) is not { } text)
            return null;
        try
        {
            _ = Instruments.Links.ResourceName.Parse(text);
            return text;
        }
        catch (BenchFaultException fault)
        {
            throw new BenchFaultException(fault.Kind, $"{fault.Found} in the field {field}", fault.Expected, fault.WhatToDo, fault);
        }
    }

    private static void RequireOwnPorts(BenchWiring wiring)
    {
        string[] used = [.. new[] { wiring.Meter, wiring.Fixture, wiring.CapacitanceMeter }.OfType<string>()];
        if (used.GroupBy(name => name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            throw new BenchFaultException(
                BenchFault.BadFile, $"{twice.Key} for two instruments", "an address for each", "Choose another for one of them.");
        }
    }

    private static BenchFaultException NoMeter() => new(BenchFault.BadFile, "no meter", "the meter's address, or a meter that is read by eye",
        "Choose one of those that were found, type its address, or choose read by eye.");
}
