using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>How a family measures a capacitance.</summary>
public sealed record DriverCapacitance
{
    /// <summary>The commands that choose function, test signal and trigger, in the meter's order.</summary>
    [Description("The commands that choose function, test signal and trigger, in the meter's order.")]
    public required IReadOnlyList<DriverCommand> SetUp { get; init; }

    /// <summary>The test frequency in hertz; fills <c>{frequency}</c>.</summary>
    [Description("The test frequency in hertz; fills {frequency}."), Range(1, 1e6)]
    public required double TestHertz { get; init; }

    /// <summary>How long to wait after a set-up, before the first reading, in seconds.</summary>
    [Description("How long to wait after a set-up, before the first reading, in seconds."), Range(0, 60)]
    public required double SettleSeconds { get; init; }

    /// <summary>How long one reading takes, in seconds; lengthens the time-out.</summary>
    [Description("How long one reading takes, in seconds; lengthens the time-out."), Range(0, 60)]
    public required double ReadSeconds { get; init; }

    /// <summary>The message that starts one reading, for a family whose trigger is not answered by it.</summary>
    /// <value>Default null: <see cref="Read"/> starts the reading.</value>
    [Description("The message that starts one reading, for a family whose trigger is not answered by it. Default null: read starts the reading.")]
    public string? Trigger { get; init; }

    /// <summary>The message that is answered by one reading.</summary>
    [Description("The message that is answered by one reading.")]
    public required string Read { get; init; }

    /// <summary>How it writes a reading.</summary>
    [Description("How it writes a reading.")]
    public required DriverCapacitanceReply Reply { get; init; }

    /// <summary>The meter's accuracy.</summary>
    [Description("The meter's accuracy.")]
    public required DriverCapacitanceAccuracy Accuracy { get; init; }
}
