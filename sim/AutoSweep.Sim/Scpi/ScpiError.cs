namespace AutoSweep.Sim.Scpi;

/// <summary>An error of the queue: its number and text, standard ones from SCPI-1999 volume 2, 21.8.</summary>
internal readonly record struct ScpiError(int Number, string Text)
{
    public static readonly ScpiError None = new(0, "No error");
    public static readonly ScpiError InvalidCharacter = new(-101, "Invalid character");
    public static readonly ScpiError Syntax = new(-102, "Syntax error");
    public static readonly ScpiError DataType = new(-104, "Data type error");
    public static readonly ScpiError ParameterNotAllowed = new(-108, "Parameter not allowed");
    public static readonly ScpiError MissingParameter = new(-109, "Missing parameter");
    public static readonly ScpiError HeaderSeparator = new(-111, "Header separator error");
    public static readonly ScpiError MnemonicTooLong = new(-112, "Program mnemonic too long");
    public static readonly ScpiError UndefinedHeader = new(-113, "Undefined header");
    public static readonly ScpiError HeaderSuffix = new(-114, "Header suffix out of range");
    public static readonly ScpiError InvalidNumber = new(-121, "Invalid character in number");
    public static readonly ScpiError NumericNotAllowed = new(-128, "Numeric data not allowed");
    public static readonly ScpiError InvalidSuffix = new(-131, "Invalid suffix");
    public static readonly ScpiError SuffixNotAllowed = new(-138, "Suffix not allowed");
    public static readonly ScpiError CharacterNotAllowed = new(-148, "Character data not allowed");
    public static readonly ScpiError InvalidString = new(-151, "Invalid string data");
    public static readonly ScpiError StringNotAllowed = new(-158, "String data not allowed");
    public static readonly ScpiError InvalidExpression = new(-171, "Invalid expression");
    public static readonly ScpiError TriggerIgnored = new(-211, "Trigger ignored");
    public static readonly ScpiError InitIgnored = new(-213, "Init ignored");
    public static readonly ScpiError TriggerDeadlock = new(-214, "Trigger deadlock");
    public static readonly ScpiError SettingsConflict = new(-221, "Settings conflict");
    public static readonly ScpiError OutOfRange = new(-222, "Data out of range");
    public static readonly ScpiError IllegalValue = new(-224, "Illegal parameter value");
    public static readonly ScpiError StaleData = new(-230, "Data corrupt or stale");
    public static readonly ScpiError QueueOverflow = new(-350, "Queue overflow");
    public static readonly ScpiError InputOverrun = new(-363, "Input buffer overrun");
    public static readonly ScpiError Interrupted = new(-410, "Query INTERRUPTED");
    public static readonly ScpiError Unterminated = new(-420, "Query UNTERMINATED");
    public static readonly ScpiError AfterIndefinite = new(-440, "Query UNTERMINATED after indefinite response");
    public static readonly ScpiError WatchdogExpired = new(101, "Watchdog expired");

    /// <summary>Whether the message itself was wrong; the rest of such a message is not carried out.</summary>
    public bool IsCommandError => Number is <= -100 and > -200;

    /// <summary>The bit of the event status register that stands for this class (SCPI-1999 volume 2, 21.8).</summary>
    public EventStatus Event => Number switch
    {
        0 => EventStatus.None,
        <= -400 and > -500 => EventStatus.QueryError,
        <= -200 and > -300 => EventStatus.ExecutionError,
        <= -100 and > -200 => EventStatus.CommandError,
        _ => EventStatus.DeviceError,
    };

    public override string ToString() => $"{Number},\"{Text}\"";
}
