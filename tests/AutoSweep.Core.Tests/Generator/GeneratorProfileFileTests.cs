using AutoSweep.Core.Generator;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Generator;

public class GeneratorProfileFileTests
{
    private static readonly string Good = GeneratorProfileLibrary.TextOf("invented-smallbench-14-60hz");

    /// <summary>What is changed in a good file, into what, on which line the fault must be, what it must find, expect and advise.</summary>
    public static TheoryData<string, string, int, string, string, string> Faults => new()
    {
        { "\"mainsHertz\"", "\"mainHertz\"", 7, "mainHertz: an unknown field", "mainsHertz", "Write \"mainsHertz\"" },
        { "\"invented\"", "\"Invented\"", 6, "Invented: an unknown field", "invented", "Write \"invented\"" },
        { "\"invented\"", "\"colour\"", 6, "colour: an unknown field", "format, name, source", "Remove the field" },
        { "\"number\": 3, \"gearTrain\"", "\"number\": 3, \"geerTrain\"", 21, "outputs[2].geerTrain: an unknown field", "gearTrain", "Write \"gearTrain\"" },
        { "100000, \"law\"", "100000, \"lore\"", 27, "outputs[8].capacitor.lore", "expectedPicofarads, law", "" },
        { "  \"mainsHertz\": 60,\n", "", 1, "the field \"mainsHertz\" is missing", "a field \"mainsHertz\"", "Add the field" },
        { "\"wheelTeeth\": 16, \"filter\": \"none\", \"group\": \"plain\", \"expectedMillivolts\": 4.0", "\"filter\": \"none\", \"group\": \"plain\"", 19,
            "outputs[0]: the field \"wheelTeeth\" is missing", "wheelTeeth", "Add the field" },
        { ", \"law\": \"series\" }, \"expectedMillivolts\": 5.6", " }", 27, "outputs[8].capacitor: the field \"law\" is missing", "law", "Add" },
        { "\"mainsHertz\": 60", "\"mainsHertz\": \"60\"", 7, "mainsHertz: \"60\"", "a number", "without quotes" },
        { "\"mainsHertz\": 60", "\"mainsHertz\": 44.9", 7, "mainsHertz: 44.9", "a number from 45 to 65", "" },
        { "\"mainsHertz\": 60", "\"mainsHertz\": 65.1", 7, "mainsHertz: 65.1", "a number from 45 to 65", "" },
        { "\"mainsHertz\": 60", "\"mainsHertz\": 60, \"mainsHertz\": 50", 7, "again on line 7", "each field once", "Remove one" },
        { "\"mainsHertz\": 60", "\"mainsHertz\": null", 7, "mainsHertz: null", "a number", "" },
        { "\"mainsHertz\": 60", "\"mainsHertz\": 1e999", 7, "mainsHertz: 1e999", "a number", "" },
        { "\"format\": 1", "\"format\": 2", 3, "format: 2", "a number from 1 to 1", "" },
        { "\"invented\": true", "\"invented\": \"yes\"", 6, "invented: \"yes\"", "true or false", "" },
        { "\"name\": \"Smallbench 14 (invented), 60 Hz mains\"", "\"name\": 14", 4, "name: 14", "a text in quotes", "" },
        { "\"name\": \"Smallbench 14 (invented), 60 Hz mains\"", "\"name\": \" \"", 4, "name: an empty text", "the generator's name", "" },
        { "\"number\": 3,", "\"number\": 2.5,", 21, "outputs[2].number: 2.5", "a whole number", "" },
        { "\"number\": 3,", "\"number\": 2,", 21, "outputs[2].number: output 2 after output 2", "rise from line to line", "order" },
        { "\"number\": 3,", "\"number\": 1,", 21, "output 1 after output 2", "rise from line to line", "order" },
        { "\"number\": 1,", "\"number\": 0,", 19, "outputs[0].number: 0", "a number from 1 to 999", "" },
        { "\"drivingTeeth\": 67", "\"drivingTeeth\": 0", 11, "gearTrains[\"bench 2\"].drivingTeeth: 0", "a number from 1", "" },
        { "\"number\": 3, \"gearTrain\": \"bench 3\", \"wheelTeeth\": 16", "\"number\": 3, \"gearTrain\": \"bench 3\", \"wheelTeeth\": -16", 21,
            "wheelTeeth: -16", "a number from 1", "" },
        { "\"number\": 3, \"gearTrain\": \"bench 3\"", "\"number\": 3, \"gearTrain\": \"bnech 3\"", 21, "an unknown gear train \"bnech 3\"",
            "bench 1, bench 2, bench 3", "Write \"bench 3\"" },
        { "\"number\": 3, \"gearTrain\": \"bench 3\"", "\"number\": 3, \"gearTrain\": \"bench 2\"", 21, "outputs 2 and 3 both give 536.00 Hz",
            "at least 0.1 % apart", "gearTrain and wheelTeeth" },
        { "\"transformer\", \"group\"", "\"transformator\", \"group\"", 25, "filter: \"transformator\"", "\"none\", \"transformer\", \"tunedLc\"",
            "Write \"transformer\"" },
        { "\"tunedLc\", \"group\": \"series 0.1 uF\"", "\"none\", \"group\": \"plain\"", 27, "a capacitor at output 9", "no capacitor", "tunedLc" },
        { "\"tunedLc\", \"group\": \"series 0.1 uF\"", "\"transformer\", \"group\": \"plain\"", 27, "a capacitor at output 9", "no capacitor", "tunedLc" },
        { "\"filter\": \"transformer\", \"group\": \"transformer\", \"expectedMillivolts\": 5.2", "\"filter\": \"tunedLc\", \"group\": \"t\"", 25,
            "output 7 has a tuned filter without a capacitor", "a field \"capacitor\"", "Add the capacitor" },
        { "\"expectedPicofarads\": 100000", "\"expectedPicofarads\": 99", 27, "expectedPicofarads: 99", "a number from 100 to 10000000", "" },
        { "\"expectedPicofarads\": 100000", "\"expectedPicofarads\": 10000001", 27, "expectedPicofarads: 10000001", "a number from 100 to 10000000", "" },
        { "\"law\": \"series\"", "\"law\": \"serial\"", 27, "law: \"serial\"", "\"unknown\", \"series\", \"shunt\", \"general\"", "Write \"series\"" },
        { "\"law\": \"series\"", "\"law\": 1", 27, "law: 1", "\"series\"", "" },
        { "\"group\": \"series 0.1 uF\"", "\"group\": \"\"", 27, "an empty text at output 9", "the name of a group", "" },
        { "\"format\": 1,", "\"format\": 1", 4, "is invalid", "a JSON text", "a comma" },
        { "\"format\": 1,", "\"format\": 1, // version", 3, "", "a JSON text", "Comments are not allowed" },
        { "\"gearTrains\": {", "\"gearTrains\": 7, \"variants\": {", 9, "gearTrains: 7", "an object in braces", "" },
        { "\"gearTrains\": {", "\"variants\": { \"v\": { \"description\": \"d\", \"gearTrains\": { \"bench 9\": { \"drivingTeeth\": 1, \"drivenTeeth\": 1 } } } }, \"gearTrains\": {",
            9, "variants.v.gearTrains[\"bench 9\"]: an unknown gear train", "bench 1", "bench" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void A_fault_in_the_file_names_line_and_field_and_says_what_to_do(string good, string bad, int line, string found, string expected, string advice)
    {
        Assert.Contains(good, Good, StringComparison.Ordinal);
        var fault = FaultOf(ReplaceFirst(Good, good, bad));
        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.StartsWith($"bench.json, line {line}:", fault.Found, StringComparison.Ordinal);
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
        Assert.Contains(expected, fault.Expected, StringComparison.Ordinal);
        Assert.NotEmpty(fault.WhatToDo);
        Assert.Contains(advice, fault.WhatToDo, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("{} {}")]
    [InlineData("{\"outputs\": []}")]
    public void A_text_that_is_no_profile_is_a_bad_file(string text) => Assert.Equal(BenchFault.BadFile, FaultOf(text).Kind);

    [Fact]
    public void A_profile_without_outputs_is_refused()
    {
        var from = Good.IndexOf("\"outputs\": [", StringComparison.Ordinal);
        Assert.Contains("at least one output", FaultOf(Good[..from] + "\"outputs\": [] }").Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_is_a_bad_file_that_is_named()
    {
        var fault = Assert.Throws<BenchFaultException>(() => GeneratorProfileFile.Read("no-such-folder/no-such.json"));
        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.Contains("no-such.json", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mistyped_name_of_a_shipped_profile_is_answered_with_the_nearest()
    {
        var fault = Assert.Throws<BenchFaultException>(() => GeneratorProfileLibrary.Open("clasic-91-60hz"));
        Assert.Contains("Write classic-91-60hz", fault.WhatToDo, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("classic-91-60hz#e-1-2", "one of e-69-67")]
    [InlineData("invented-smallbench-14-60hz#e-69-67", "this profile has none")]
    public void An_unknown_variant_is_answered_with_those_there_are(string reference, string expected)
    {
        var fault = Assert.Throws<BenchFaultException>(() => GeneratorProfileLibrary.Open(reference));
        Assert.Contains(expected, fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void A_decimal_comma_culture_changes_neither_reading_nor_messages()
    {
        using var comma = Culture.DecimalComma();
        var changed = Good.Replace("\"mainsHertz\": 60", "\"mainsHertz\": 59.5", StringComparison.Ordinal);
        Assert.Equal(59.5, GeneratorProfileFile.Parse(changed, "bench.json").MainsHertz);
        Assert.Contains("mainsHertz: 65.1", FaultOf(Good.Replace("\"mainsHertz\": 60", "\"mainsHertz\": 65.1", StringComparison.Ordinal)).Found,
            StringComparison.Ordinal);
    }

    private static BenchFaultException FaultOf(string text) => Assert.Throws<BenchFaultException>(() => GeneratorProfileFile.Parse(text, "bench.json"));

    private static string ReplaceFirst(string text, string old, string replacement)
    {
        var at = text.IndexOf(old, StringComparison.Ordinal);
        return text[..at] + replacement + text[(at + old.Length)..];
    }
}
