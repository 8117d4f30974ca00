// The words that lead from an expression to its result.
#pragma once
#include <string_view>

namespace retort::calc {

// "gives", "got", "so", "is": a result may follow.
bool is_linking_word(std::string_view word);
// "about", "that", "the", "answer": may stand between without meaning anything else.
bool is_filler_word(std::string_view word);
// "because", "from", "doing": an expression may follow its result.
bool is_reason_word(std::string_view word);
// "change", "convert", "into": the same quantity in another unit may follow.
bool is_converting_word(std::string_view word);

}  // namespace retort::calc
