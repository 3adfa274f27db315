// links: say_host
// Settings and readers' files in a folder of the test's own.
#include "host/settings.h"

#include "host/files.h"
#include "host/readers.h"
#include "support/catch.h"
#include "support/error.h"
#include "support/scratch.h"

#include <nlohmann/json.hpp>

#include <fstream>

using namespace say;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> shown(const Setup& setup) {
    std::vector<std::string> list;
    list.reserve(setup.problems.size());
    for (const SettingsProblem& problem : setup.problems) {
        list.push_back(problem.file.filename().string() + ":" + std::to_string(problem.line) + ":" +
                       std::to_string(problem.column) + ": " + problem.message);
    }
    return list;
}

} // namespace

TEST_CASE("settings/without a folder the defaults hold") {
    const Scratch scratch;
    const Setup setup = load_setup(scratch.at("talk.say"), nullptr);
    CHECK(setup.folder.empty());
    CHECK(setup.problems.empty());
    CHECK(setup.options.rules.breath_limit == Seconds{6});
    CHECK(load_setup({}, nullptr).folder.empty());
}

TEST_CASE("settings/the nearest folder above counts") {
    const Scratch scratch;
    scratch.write(".sayline/settings.json", R"({"breath_limit": 4})");
    CHECK(load_setup(scratch.at("a/b/talk.say"), nullptr).options.rules.breath_limit == Seconds{4});
    scratch.write("a/.sayline/settings.json", R"({"breath_limit": 5})");
    const Setup setup = load_setup(scratch.at("a/b/talk.say"), nullptr);
    CHECK(setup.options.rules.breath_limit == Seconds{5});
    CHECK(setup.folder.filename() == ".sayline");
    CHECK(setup.problems.empty());
}

TEST_CASE("settings/comments and a schema line are fine") {
    const Scratch scratch;
    scratch.write(".sayline/settings.json", "{\n  \"$schema\": \"settings.schema.json\",\n"
                                            "  // Jo runs out of breath.\n"
                                            "  \"breath_limit\": 4, /* for now */\n"
                                            "  \"stage\": \"mark\"\n}\n");
    const Setup setup = load_setup(scratch.at("talk.say"), nullptr);
    CHECK(shown(setup).empty());
    CHECK(setup.options.rules.breath_limit == Seconds{4});
    CHECK(setup.options.stage == Stage::mark);
}

TEST_CASE("settings/a wrong value is reported where it stands and the rest applies") {
    const Scratch scratch;
    const std::string rule(all_rules().front()->id);
    scratch.write(".sayline/settings.json", "{\n  // \"breath_limit\": 3 was too strict\n"
                                            "  \"breath_limit\": 99,\n"
                                            "  \"stage\": \"mark\", \"tide\": [1],\n"
                                            "  \"rules\": {\"stage\": \"off\", \"" +
                                                rule +
                                                "\": \"loud\"},\n"
                                                "  \"reader\": \"jo\",\n"
                                                "  \"hint_clock\": true\n}\n");
    const Setup setup = load_setup(scratch.at("talk.say"), nullptr);
    CHECK(setup.options.rules.breath_limit == Seconds{6});
    CHECK(setup.options.stage == Stage::mark);
    CHECK(setup.options.hint_clock);
    std::vector<std::string> problems = shown(setup);
    std::sort(problems.begin(), problems.end());
    REQUIRE(problems.size() == 5);
    CHECK(problems[0] == "settings.json:3:3: breath_limit cannot be 99; it may be 1 to 30 seconds");
    CHECK(problems[1] == "settings.json:4:20: no setting is called \"tide\"");
    CHECK(problems[2] == "settings.json:5:13: no rule is called \"stage\"");
    CHECK(problems[3].starts_with("settings.json:5:29: rule " + rule + " cannot be \"loud\""));
    CHECK(problems[4].starts_with(
        "settings.json:6:3: reader \"jo\" has no file .sayline/readers/jo.json"));
}

TEST_CASE("settings/a file that is no JSON is one problem with its place") {
    const Scratch scratch;
    scratch.write(".sayline/settings.json", "{\n  \"breath_limit\": 4\n  \"stage\": \"mark\"\n}\n");
    const Setup setup = load_setup(scratch.at("talk.say"), nullptr);
    REQUIRE(setup.problems.size() == 1);
    CHECK(setup.problems[0].line == 3);
    CHECK(setup.problems[0].message.starts_with("not JSON: "));
    CHECK(setup.options.stage == Stage::draft);
    for (const std::string_view bytes : {"", "[1, 2]", "7", "\xFF\xFE{", "{\"a\": \"\xE9\"}"}) {
        scratch.write(".sayline/settings.json", bytes);
        CHECK(load_setup(scratch.at("talk.say"), nullptr).problems.size() == 1);
    }
}

TEST_CASE("settings/an editor's are stronger than the file's") {
    const Scratch scratch;
    scratch.write(".sayline/settings.json", R"({"breath_limit": 4, "stage": "mark"})");
    const auto editor = nlohmann::json::parse(
        R"({"breath_limit": 5, "stage": null, "hint_seconds": "never", "rules": null})");
    const Setup setup = load_setup(scratch.at("talk.say"), &editor);
    CHECK(setup.options.rules.breath_limit == Seconds{5});
    CHECK(setup.options.stage == Stage::mark); // null is "not set"
    REQUIRE(setup.problems.size() == 1);
    CHECK(setup.problems[0].file.empty());
    CHECK(setup.problems[0].message == "hint_seconds cannot be \"never\"; it may be true or false");
}

TEST_CASE("settings/readers are found by the name of their file") {
    const Scratch scratch;
    scratch.write(".sayline/readers/mira.json",
                  R"({"version": 1, "name": "mira", "speech": 1.05, "pauses": 0.9, "reads": []})");
    scratch.write(".sayline/settings.json", R"({"reader": "mira"})");
    const Setup setup = load_setup(scratch.at("talk.say"), nullptr);
    CHECK(shown(setup).empty());
    REQUIRE(setup.options.readers.contains("mira"));
    CHECK(setup.options.readers.at("mira").speech == 1.05);
    CHECK(setup.options.readers.at("mira").pauses == 0.9);
    CHECK(setup.options.reader == "mira");
}

TEST_CASE("settings/a reader's file that is not sound is left out with a sentence") {
    const Scratch scratch;
    const auto message = [&](std::string_view bytes) {
        const auto reader = load_reader(scratch.write("jo.json", bytes));
        return reader ? std::string("no error") : reader.error().message;
    };
    CHECK(message("{").ends_with("not a reader's file (a JSON object is expected)"));
    CHECK(message("{}").ends_with("\"version\" is missing; it should be 1"));
    CHECK(message(R"({"version": 2})").find("version 2 was written by another") !=
          std::string::npos);
    CHECK(message(R"({"version": 1, "speech": 0})").find("0.25 to 4") != std::string::npos);
    CHECK(message(R"({"version": 1, "speech": "1"})").find("0.25 to 4") != std::string::npos);
    CHECK(message(R"({"version": 1, "pauses": -1})").find("0 to 4") != std::string::npos);
    CHECK(message(R"({"version": 1})") == "no error");
    scratch.write(".sayline/readers/jo.json", "{}");
    CHECK(load_setup(scratch.at("talk.say"), nullptr).problems.size() == 1);
}

TEST_CASE("settings/the stamp changes with what would be read") {
    const Scratch scratch;
    CHECK(settings_stamp(scratch.at("talk.say")) == 0);
    scratch.write(".sayline/settings.json", "{}");
    const auto before = settings_stamp(scratch.at("talk.say"));
    CHECK(before != 0);
    CHECK(settings_stamp(scratch.at("talk.say")) == before);
    scratch.write(".sayline/settings.json", R"({"stage": "mark"})");
    const auto after = settings_stamp(scratch.at("talk.say"));
    CHECK(after != before);
    scratch.write(".sayline/readers/jo.json", "{}");
    CHECK(settings_stamp(scratch.at("talk.say")) != after);
}

// JSON Schema draft-07 (json-schema.org): what an editor needs to list, explain and check a key.
TEST_CASE("settings/the schema knows every option and rule") {
    const auto schema = schema_json();
    CHECK(schema.at("$schema") == "http://json-schema.org/draft-07/schema#");
    CHECK(schema.at("type") == "object");
    const auto& properties = schema.at("properties");
    for (const OptionRow& row : option_rows()) {
        INFO(row.key);
        const auto& entry = properties.at(std::string(row.key));
        CHECK(entry.at("description") == row.help);
        CHECK((entry.contains("type") || entry.contains("anyOf")));
        // The default must itself be allowed: set as an editor would send it.
        const auto editor = nlohmann::json{{row.key, entry.at("default")}};
        CHECK(shown(load_setup({}, &editor)).empty());
    }
    const auto& levels = properties.at("rules").at("properties");
    CHECK(levels.size() == all_rules().size());
    for (const Rule* rule : all_rules())
        CHECK(levels.contains(std::string(rule->id)));
}

TEST_CASE("files/text is told from what is none") {
    const auto message = [](std::string_view bytes) {
        const auto fine = check_text(bytes, "a.say");
        return fine ? std::string("no error") : fine.error().message;
    };
    CHECK(message("Count the limpets.\n") == "no error");
    CHECK(message("") == "no error");
    CHECK(message("One\nTwo \xE9t\xE9\n") ==
          "a.say:2: not UTF-8 (byte 9, value 0xE9); save it as UTF-8, or import it (--from txt) if "
          "it has no marks");
    CHECK(message(std::string_view("\x7f"
                                   "ELF\0\1",
                                   6))
              .find("not a text") != std::string::npos);
    // Unicode's byte-order mark of UTF-16, both ways round.
    CHECK(message("\xFF\xFEh") ==
          "a.say: UTF-16 text; save it as UTF-8, or import it (--from txt) if it has no marks");
    CHECK(message("\xFE\xFFh") ==
          "a.say: UTF-16 text; save it as UTF-8, or import it (--from txt) if it has no marks");
}

TEST_CASE("files/scripts are found in order and hidden folders passed over") {
    const Scratch scratch;
    for (const char* name : {"b.say", "a/c.say", "a.txt", ".git/d.say", "x.say/e.say"}) {
        scratch.write(name, "Hello.");
    }
    fs::create_directory_symlink(scratch.at("a"), scratch.at("loop"));
    const Walk walk = find_scripts(scratch.at(""));
    CHECK(walk.errors.empty());
    REQUIRE(walk.scripts.size() == 3);
    CHECK(walk.scripts[0] == scratch.at("a/c.say"));
    CHECK(walk.scripts[1] == scratch.at("b.say"));
    CHECK(walk.scripts[2] == scratch.at("x.say/e.say"));
    CHECK(find_scripts(scratch.at("nowhere")).errors.size() == 1);
}

TEST_CASE("files/writing replaces a file whole and keeps who may read it") {
    const Scratch scratch;
    const fs::path file = scratch.write("a.say", "Old.");
    fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink(file, scratch.at("link.say"));
    REQUIRE(write_text(scratch.at("link.say"), "New."));
    CHECK(fs::is_symlink(scratch.at("link.say")));
    CHECK((*read_text(file))->bytes() == "New.");
    CHECK(fs::status(file).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
    CHECK_FALSE(write_text(scratch.at("nowhere/a.say"), "New."));
    std::size_t files = 0;
    for (const auto& entry : fs::directory_iterator(scratch.at("")))
        files += entry.exists();
    CHECK(files == 2); // no draft is left behind
}

namespace {

Take take_of(std::string date, double factor, double seconds = 60) {
    const TimedStretch stretch{.speech = Seconds{seconds / factor},
                               .pause = Seconds{0},
                               .measured = Seconds{seconds},
                               .spread = spread_of(Seconds{seconds}),
                               .words = 170};
    return {.date = std::move(date),
            .source = "lines",
            .seconds = Seconds{seconds},
            .words = 170,
            .evidence = evidence_of(std::span(&stretch, 1), {})};
}

std::string bytes_of(const fs::path& file) {
    return std::string((*read_text(file))->bytes());
}

} // namespace

TEST_CASE("readers/a take is kept, read again, and timed by") {
    const Scratch scratch;
    const fs::path file = scratch.at(".sayline/readers/mira.json");
    auto opened = ReaderFile::open(file, false);
    REQUIRE(opened.has_value());
    const Learnt learnt = opened->add(take_of("2026-11-25", 1.2));
    CHECK(learnt.takes == 1);
    REQUIRE(opened->save().has_value());
    const auto reader = load_reader(file);
    REQUIRE(reader.has_value());
    CHECK(std::abs(reader->speech - learnt.numbers.speech) < 0.001);
    CHECK(reader->rests_on == Seconds{60});
    CHECK(load_setup(scratch.at("talk.say"), nullptr).problems.empty());
}

TEST_CASE("readers/takes add up and keys of others stay") {
    const Scratch scratch;
    const fs::path file = scratch.at("mira.json");
    auto first = ReaderFile::open(file, false);
    REQUIRE(first.has_value());
    first->add(take_of("2026-11-01", 1.2));
    REQUIRE(first->save().has_value());
    auto json = nlohmann::ordered_json::parse(bytes_of(file));
    json["colour"] = "blue";
    scratch.write("mira.json", json.dump());

    auto second = ReaderFile::open(file, false);
    REQUIRE(second.has_value());
    CHECK_FALSE(second->add(take_of("2026-11-25", 1.1, 90)).known_take);
    const Learnt again = second->add(take_of("2026-11-25", 1.1, 90));
    CHECK(again.known_take);
    CHECK(again.takes == 2);
    CHECK(again.rests_on == Seconds{150});
    CHECK(again.newest == "2026-11-25");
    REQUIRE(second->save().has_value());
    json = nlohmann::ordered_json::parse(bytes_of(file));
    CHECK(json["colour"] == "blue");
    CHECK(json["takes"].size() == 2);
    CHECK(json["date"] == "2026-11-25");
}

TEST_CASE("readers/what was written by hand stays as it is") {
    const Scratch scratch;
    const std::string by_hand = R"({"version": 1, "name": "mira", "speech": 1.05, "pauses": 0.9})";
    const fs::path file = scratch.write("mira.json", by_hand);
    const auto refused = ReaderFile::open(file, false);
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().message.find("written by hand") != std::string::npos);
    CHECK(bytes_of(file) == by_hand);

    auto replaced = ReaderFile::open(file, true);
    REQUIRE(replaced.has_value());
    replaced->add(take_of("2026-11-25", 1.2));
    REQUIRE(replaced->save().has_value());
    auto json = nlohmann::ordered_json::parse(bytes_of(file));
    json["speech"] = 1.5; // somebody knows better
    scratch.write("mira.json", json.dump());
    const auto changed = ReaderFile::open(file, false);
    REQUIRE_FALSE(changed.has_value());
    CHECK(changed.error().message.find("changed by hand") != std::string::npos);
    // Comments are somebody's, too.
    scratch.write("mira.json", "// mine\n" + bytes_of(file));
    CHECK_FALSE(ReaderFile::open(file, false).has_value());
}

TEST_CASE("readers/a damaged take or another version is named") {
    const Scratch scratch;
    const fs::path damaged = scratch.write(
        "a.json", R"({"version": 1, "speech": 1, "pauses": 1, "takes": [{"seconds": "x"}]})");
    CHECK(ReaderFile::open(damaged, false).error().message.find("take 1") != std::string::npos);
    const fs::path later =
        scratch.write("b.json", R"({"version": 7, "speech": 1, "takes": [{"seconds": 1}]})");
    CHECK(ReaderFile::open(later, false).error().message.find("version 7") != std::string::npos);
}

TEST_CASE("readers/names that make no file, and dates that are none") {
    for (const char* name : {"mira", "Mira Lund", "jo_2", "Zoë"})
        CHECK(check_reader_name(name).has_value());
    for (const char* name : {"", "../x", "a/b", " a", "a.json"})
        CHECK_FALSE(check_reader_name(name).has_value());
    CHECK(check_date("2024-02-29").has_value());
    for (const char* date : {"2026-02-29", "2026-13-01", "26-01-01", "2026/01/01", "yesterday"})
        CHECK_FALSE(check_date(date).has_value());
    CHECK(check_date(today()).has_value());
}
