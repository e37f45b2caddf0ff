using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using AutoSweep.Core.Decades;
using AutoSweep.Worker.ByHand;

namespace AutoSweep.Worker.Bench;

/// <summary>How the bench is wired: bench.json, and what the command line says over it.</summary>
public sealed record BenchWiring
{
    /// <summary>Version of the file format; 1 is the only one.</summary>
    [Description("Version of the file format; 1 is the only one.")]
    [Range(1, 1)]
    public int Format { get; init; } = 1;

    /// <summary>What stands for a resource name where a person reads the meter.</summary>
    public const string ByEye = "eye";

    /// <summary>What stands for a resource name where a person dials the box.</summary>
    public const string ByHand = "hand";

    /// <summary>The meter's VISA resource name, such as <c>TCPIP::192.0.2.10::5025::SOCKET</c>; <c>eye</c> where a person reads it.</summary>
    [Description("The meter's VISA resource name, such as TCPIP::192.0.2.10::5025::SOCKET; \"eye\" where a person reads it and types the level.")]
    public string? Meter { get; init; }

    /// <summary>The meter's driver.</summary>
    /// <value>Default <c>scpi-dmm</c>, the baseline that most SCPI multimeters follow.</value>
    [Description("The meter's driver; scpi-dmm when left out.")]
    public string MeterDriver { get; init; } = "scpi-dmm";

    /// <summary>A folder of further meter drivers; relative to bench.json when it stands there.</summary>
    /// <value>Default none: the data folder's and the program's own are looked into in any case.</value>
    [Description("A folder of further meter drivers, relative to this file; the data folder's and the program's own are looked into in any case.")]
    public string? Drivers { get; init; }

    /// <summary>Voltage gain of a front-end amplifier between the clips and the meter, 1 without one; 0.01 to 10000.</summary>
    [Description("Voltage gain of a front-end amplifier between the clips and the meter; 1 when left out.")]
    [Range(0.01, 10000)]
    public double AmplifierGain { get; init; } = 1;

    /// <summary>The fixture's VISA resource name, such as <c>ASRL/dev/ttyUSB0::INSTR</c>; none for a survey without it; <c>hand</c> for a box that a person dials.</summary>
    [Description("The relay fixture's VISA resource name, such as ASRL/dev/ttyUSB0::INSTR; \"hand\" for the decade box below, dialled by hand.")]
    public string? Fixture { get; init; }

    /// <summary>The fixture's calibration file; relative to bench.json when it stands there.</summary>
    [Description("The fixture's calibration file, relative to this file.")]
    public string? Calibration { get; init; }

    /// <summary>The capacitance meter's VISA resource name; none where values are typed.</summary>
    [Description("The capacitance meter's VISA resource name; without one values are typed.")]
    public string? CapacitanceMeter { get; init; }

    /// <summary>The capacitance meter's driver.</summary>
    /// <value>Default <c>scpi-lcr</c>, the baseline that most SCPI LCR meters follow.</value>
    [Description("The capacitance meter's driver; scpi-lcr when left out.")]
    public string CapacitanceMeterDriver { get; init; } = "scpi-lcr";

    /// <summary>Picofarads of the capacitance meter's leads where the meter itself does not correct them, 0 to 10000.</summary>
    [Description("Picofarads of the capacitance meter's leads where the meter itself does not correct them; 0 when left out.")]
    [Range(0, 10000)]
    public double CapacitanceMeterLeadsPicofarads { get; init; }

    /// <summary>Seconds to wait for the meter's AC detector after each change, 0 to 60, in place of the driver file's figure.</summary>
    [Description("Seconds to wait for the meter's AC detector after each change; the driver's figure when left out.")]
    [Range(0, 60)]
    public double? SettleSeconds { get; init; }

    /// <summary>The decade box that is dialled by hand; needed where <see cref="Fixture"/> says <c>hand</c>.</summary>
    [Description("The decade box that is dialled by hand, where fixture says hand.")]
    public DecadeBox? Box { get; init; }

    /// <summary>How the meter is read, where <see cref="Meter"/> says <c>eye</c>.</summary>
    [Description("How the meter is read, where meter says eye.")]
    public EyeReading Eye { get; init; } = new();

    /// <summary>Whether a person types levels.</summary>
    [JsonIgnore]
    public bool IsReadByEye => string.Equals(Meter, ByEye, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a person dials.</summary>
    [JsonIgnore]
    public bool IsDialledByHand => string.Equals(Fixture, ByHand, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether somebody must type, so that nothing may move on the screen meanwhile.</summary>
    [JsonIgnore]
    public bool IsTyped => IsReadByEye || IsDialledByHand;
}
