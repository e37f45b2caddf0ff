using System.Collections.Frozen;

namespace AutoSweep.Instruments.Scpi;

/// <summary>The standard's error numbers and texts (SCPI-1999, volume 2, chapter 21.8).</summary>
public static class StandardErrors
{
    private static readonly FrozenDictionary<int, string> Texts = new Dictionary<int, string>
    {
        [0] = "No error",
        [-100] = "Command error",
        [-101] = "Invalid character",
        [-102] = "Syntax error",
        [-103] = "Invalid separator",
        [-104] = "Data type error",
        [-105] = "GET not allowed",
        [-108] = "Parameter not allowed",
        [-109] = "Missing parameter",
        [-110] = "Command header error",
        [-111] = "Header separator error",
        [-112] = "Program mnemonic too long",
        [-113] = "Undefined header",
        [-114] = "Header suffix out of range",
        [-115] = "Unexpected number of parameters",
        [-120] = "Numeric data error",
        [-121] = "Invalid character in number",
        [-128] = "Numeric data not allowed",
        [-131] = "Invalid suffix",
        [-138] = "Suffix not allowed",
        [-141] = "Invalid character data",
        [-148] = "Character data not allowed",
        [-151] = "Invalid string data",
        [-161] = "Invalid block data",
        [-171] = "Invalid expression",
        [-200] = "Execution error",
        [-201] = "Invalid while in local",
        [-203] = "Command protected",
        [-210] = "Trigger error",
        [-211] = "Trigger ignored",
        [-213] = "Init ignored",
        [-214] = "Trigger deadlock",
        [-220] = "Parameter error",
        [-221] = "Settings conflict",
        [-222] = "Data out of range",
        [-223] = "Too much data",
        [-224] = "Illegal parameter value",
        [-230] = "Data corrupt or stale",
        [-231] = "Data questionable",
        [-240] = "Hardware error",
        [-241] = "Hardware missing",
        [-310] = "System error",
        [-330] = "Self-test failed",
        [-340] = "Calibration failed",
        [-350] = "Queue overflow",
        [-360] = "Communication error",
        [-361] = "Parity error in program message",
        [-362] = "Framing error in program message",
        [-363] = "Input buffer overrun",
        [-365] = "Time out error",
        [-400] = "Query error",
        [-410] = "Query INTERRUPTED",
        [-420] = "Query UNTERMINATED",
        [-430] = "Query DEADLOCKED",
        [-440] = "Query UNTERMINATED after indefinite response",
        [-500] = "Power on",
        [-600] = "User request",
        [-700] = "Request control",
        [-800] = "Operation complete",
    }.ToFrozenDictionary();

    /// <summary>The standard's text for a number.</summary>
    /// <returns>Null for a number that this table does not hold, such as an instrument's own.</returns>
    public static string? TextOf(int number) => Texts.GetValueOrDefault(number);
}
