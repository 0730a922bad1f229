using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Fuzz;

/// <summary>A decoder, and what it starts from.</summary>
/// <param name="Name">What the table calls it.</param>
/// <param name="Topic">The topic of <see cref="FuzzPlant"/> whose payloads it reads.</param>
/// <param name="Decode">The decoder.</param>
/// <param name="Refusals">What it may refuse for, and nothing else.</param>
/// <param name="Seeds">Payloads to begin with, right and wrong ones.</param>
/// <param name="Dictionary">Pieces that mean something to it.</param>
internal sealed record Target(
    string Name, string Topic, Action<byte[], List<DecodedItem>> Decode, IReadOnlyList<RefusalReason> Refusals, IReadOnlyList<byte[]> Seeds, IReadOnlyList<byte[]> Dictionary)
{
    /// <summary>When everything arrives that is not put through the fold.</summary>
    public static readonly Instant Arrival = Instant.FromUtc(2026, 3, 1, 7, 30);

    public static Target Number { get; } = new(
        "plain number", FuzzPlant.Ph, (payload, items) => items.Add(PlainNumber.Decode(payload)), DecoderRefusals.PlainNumber,
        Texts("7.21", " -3\r\n", "6.5e2", "+.5", "1e999", "NaN", "-Infinity", "7,21", "seven", " "), [.. Texts("e", "E+", "-", ".", "0", "9", "e308", "1e-400", "nan", "inf", " ", "\0", "\t", "\uFEFF"), .. Bytes("c3", "ff", "e282ac")]);

    public static Target PumpState { get; } = new(
        "pump state", FuzzPlant.AcidState, (payload, items) => items.Add(PumpStateWords.Decode(payload)), DecoderRefusals.PumpState,
        Texts("running", "Stopped", "FAULT ", "0", "1", "2", "priming"), [.. Texts("r", "running", "0", "2", " ", "\n"), .. Bytes("00", "ff", "c0")]);

    public static Target SenmlJson { get; } = new(
        "SenML JSON", FuzzPlant.Json, (payload, items) => Core.Readings.Payloads.SenmlJson.Decode(payload, Arrival, items), DecoderRefusals.SenmlJson,
        Texts(
            """[{"n":"hall:ph","u":"pH","v":7.31}]""",
            """[{"bn":"hall:","bt":-5,"n":"ph","v":7.3},{"n":"temperature","u":"Cel","t":2,"v":28.4},{"n":"ph","t":4,"v":7.31}]""",
            """[{"bn":"urn:dev:ow:10e2073a0108006:","bt":1.276020076001e+09,"bu":"A","bver":5,"n":"voltage","u":"V","v":120.1},{"n":"current","t":-5,"v":1.2},{"n":"current","v":1.7}]""",
            """[{"bn":"hall:","bv":1e3,"bs":2,"n":"temp","u":"Cel","v":23.1,"s":3,"ut":60},{"n":"label","vs":"M\u0061ch\ud83d\ude00"},{"n":"open","vb":false},{"n":"r","vd":"aGkgCg"},{"n":"x","l":[{"y":[]}],"z_":1,"v":2}]""",
            """[{"n":"hall:ph","v":1e400},{"n":"a","v":1,"t":1e12},{"n":"a","v":1,"t":-1e300},{"n":"-","v":1}]""",
            """[{"bver":11,"n":"a","v":1}]""", """[{"n":"a","v":1,"u":"abcdefghijklmnopqrstuvwxyz0123456789"}]""", """[{},{},{"n":"a"},{"v":1}]""", "[]", "{}", " "),
        [
            .. Texts("\"bn\":", "\"bt\":", "\"bu\":", "\"bv\":", "\"bs\":", "\"bver\":", "\"n\":", "\"u\":", "\"v\":", "\"vs\":", "\"vb\":", "\"vd\":", "\"s\":", "\"t\":", "\"ut\":", "\"x_\":", "\"b_\":"),
            .. Texts("{", "}", "[", "]", ",", ":", "\"", "{},", "[[[[", "true", "null", "1e308", "-0", "268435456", "\\u0000", "\\ud800", "\\", "//", "hall:ph", "\"pH\"", " "), .. Bytes("ff", "c080"),
        ]);

    public static Target SenmlCbor { get; } = new(
        "SenML CBOR", FuzzPlant.Cbor, (payload, items) => Core.Readings.Payloads.SenmlCbor.Decode(payload, Arrival, items), DecoderRefusals.SenmlCbor,
        Bytes(
            // [{0: "hall:ph", 1: "pH", 2: 4([-2, 731])}]
            "81a3006768616c6c3a70680162704802c482211902db",
            // [{-2: "hall:", -3: -5, 0: "ph", 2: 7.3}, {0: "temperature", 1: "Cel", 6: 2, 2: 28.4_2}, {0: "ph", 6: 4.0_1, 2: 7.31}]
            "83a4216568616c6c3a22240062706802fb401d333333333333a4006b74656d7065726174757265016343656c060202fa41e33333a30062706806f9440002fb401d3d70a3d70a3d",
            // the example of RFC 8428 section 6
            "87a721781b75726e3a6465763a6f773a3130653230373361303130383030363a22fb41d303a15b00106223614120050067766f6c7461676501615602fb405e066666666666a3006763757272656e74062402fb3ff3333333333333a3006763757272656e74062302fb3ff4cccccccccccda3006763757272656e74062202fb3ff6666666666666a3006763757272656e74062102f93e00a3006763757272656e74062002fb3ff999999999999aa3006763757272656e74060002fb3ffb333333333333",
            // [_ {_ "n": "hall:ph", "v": 7, "x": [_ 1, {2: (_ "a", "b")}]}]
            "9fbf616e6768616c6c3a706861760761789f01a1027f61616162ffffffff",
            // [{-5: 1000, -6: 2, 0: "a", 4: true, 5: 3, 7: 60}, {3: "x"}, {8: h'00'}, {0: "b", 2: 1, "z_": 1}]
            "84a6241903e8250200616104f5050307183ca1036178a1084100a30061620201627a5f01",
            // values NaN, infinity, 4([400, 1]), 4([-1, 2(h'010000000000000000')]); times 10^12 and -10^300; a name "-"
            "87a200616102f97e00a200616102f97c00a200616102c48219019001a200616102c48220c249010000000000000000a3006161020106fb426d1a94a2000000a3006161020106fbfe37e43c8800759ca200612d0201",
            // many short records in a stream: empty ones, switches under a name that is none
            "9fa0a0a0ff", "9fa121622378a104f5a104f5a104f5ff",
            // version 11; a unit of 36 letters; a name with a blank; a text that is no UTF-8; no record, no array, nothing
            "81a3200b0061610201", "81a300616102010178246162636465666768696a6b6c6d6e6f707172737475767778797a30313233343536373839", "81a200637020310201", "81a30061610201617862c328", "80", "a0", "07", ""),
        [
            .. Bytes("20", "21", "22", "23", "24", "25", "00", "01", "02", "03", "04", "05", "06", "07", "08", "80", "81", "9f", "a0", "a1", "bf", "ff", "5f", "7f", "40", "60"),
            .. Bytes("f4", "f5", "f6", "f7", "f97e00", "f93c00", "fa7f800000", "fb7ff8000000000000", "fb4034000000000000", "1a10000000", "1b0000000100000000", "3bffffffffffffffff"),
            .. Bytes("c4", "c482", "c48221", "c24101", "d9d9f7", "c1", "9b7fffffffffffffff", "bb00000000ffffffff", "7b0000000000000005", "5bffffffffffffffff", "818181818181", "a100", "627a5f", "6162", "006768616c6c3a7068", "62c328"),
        ]);

    public static IReadOnlyList<Target> All { get; } = [Number, PumpState, SenmlJson, SenmlCbor];

    private static byte[][] Texts(params string[] texts) => [.. texts.Select(Encoding.UTF8.GetBytes)];

    private static byte[][] Bytes(params string[] hex) => [.. hex.Select(Convert.FromHexString)];
}
